"use client";

import { type ReactNode, useState } from "react";

/** A fold whose content is drawn when it is opened: hundreds of lines that few look at are not sent with every page. */
export function WhenOpened(props: { summary: ReactNode; content: () => ReactNode }) {
  const [opened, setOpened] = useState(false);
  return (
    <details onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{props.summary}</summary>
      {opened ? props.content() : null}
    </details>
  );
}
