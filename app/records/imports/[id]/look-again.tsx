"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";

/** Reads the page anew every second while an import runs; without JavaScript there is a link. */
export function LookAgain(props: { path: string }) {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), 1000);
    return () => clearInterval(timer);
  }, [router]);
  return (
    <p className="soft">
      You may leave this page; the import goes on, and this page tells how far it is.{" "}
      <a href={props.path}>Look again</a>
    </p>
  );
}
