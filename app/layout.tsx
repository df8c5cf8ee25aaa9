import "@fontsource-variable/source-sans-3";
import "./style.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { viewerOrNobody } from "@/lib/reports/viewer";
import { SiteHead } from "./_parts/site-head";

export const metadata: Metadata = {
  title: { default: "Canal Audit", template: "%s · Canal Audit" },
  description: "Audit of motor-driven, metered root-canal treatment from its records.",
  robots: { index: false, follow: false },
};
export const viewport: Viewport = { width: "device-width", initialScale: 1 };

export default async function Layout(props: { children: ReactNode }) {
  return (
    <html lang="en-GB">
      <body>
        <SiteHead viewer={await viewerOrNobody()} />
        <main id="content" className="content" tabIndex={-1}>
          {props.children}
        </main>
      </body>
    </html>
  );
}
