import { notFound } from "next/navigation";

/**
 * A part of the address as it was meant. What is no text (a broken escape, a NUL, which no database takes) names
 * nothing that could be found.
 */
export function fromAddress(part: string): string {
  try {
    const text = decodeURIComponent(part);
    if (!text.includes("\0")) return text;
  } catch (error) {
    if (!(error instanceof URIError)) throw error;
  }
  notFound();
}
