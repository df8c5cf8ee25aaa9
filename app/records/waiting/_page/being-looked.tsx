"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";

/** Reads the page anew while a big file is looked through; without JavaScript there is a link. */
export function BeingLooked(props: { path: string }) {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), 2000);
    return () => clearInterval(timer);
  }, [router]);
  return (
    <p role="status">
      A big file is being looked through; you may leave this page.{" "}
      <a href={props.path}>Look again</a>
    </p>
  );
}
