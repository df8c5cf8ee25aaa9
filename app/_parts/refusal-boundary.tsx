"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { Component, type ReactNode } from "react";
import { sentenceOf } from "./refusal";
import { RefusedPage } from "./refused-page";

/** Shows a refusal's sentence in place of the page; every other error goes on to Next's own pages for it. */
export function RefusalBoundary(props: { children: ReactNode }) {
  const here = `${usePathname()}?${useSearchParams()}`;
  return <Boundary here={here}>{props.children}</Boundary>;
}

type State = { here: string; error: unknown };

class Boundary extends Component<{ here: string; children: ReactNode }, State> {
  override state: State = { here: this.props.here, error: undefined };

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { error };
  }

  /** Another page is another try. */
  static getDerivedStateFromProps(props: { here: string }, state: State): Partial<State> | null {
    return props.here === state.here ? null : { here: props.here, error: undefined };
  }

  override render() {
    const { error } = this.state;
    if (error === undefined) return this.props.children;
    const sentence = sentenceOf(error);
    if (sentence === undefined) throw error;
    return <RefusedPage sentence={sentence} />;
  }
}
