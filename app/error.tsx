"use client";

import { PageHead } from "./_parts/page-head";

export default function PageError(props: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <>
      <PageHead
        over="Something failed"
        title="This page could not be made"
        lead="Nothing was changed. Try again; if it fails again, give the words below to whoever keeps this machine."
      />
      <p className="row">
        <button type="button" className="main" onClick={() => window.location.reload()}>
          Try again
        </button>
        {props.error.digest ? (
          <span className="soft">Mark in the log: {props.error.digest}</span>
        ) : null}
      </p>
    </>
  );
}
