import NextLink from "next/link";
import type { ComponentProps } from "react";

/**
 * A link within the tool. Nothing is asked of the server before it is followed: pages are made anew for whoever asks, and one with
 * a thousand links would ask for hundreds of others as it is scrolled.
 */
export function Link(props: Omit<ComponentProps<typeof NextLink>, "prefetch">) {
  return <NextLink {...props} prefetch={false} />;
}
