"use client";

import { useRouter } from "next/navigation";
import { type KeyboardEvent, type ReactNode, useState } from "react";
import { Link } from "@/app/_parts/link";

/** A point that the path leads through: what is read of it and where it leads. */
export type PathPoint = {
  readonly id: string;
  readonly words: string;
  readonly href?: string | undefined;
};

/** A path through the points of a chart; `active` is the one that is read, null before any is. */
export type PointPath = {
  readonly active: number | null;
  readonly pick: (place: number) => void;
  readonly points: readonly PathPoint[];
};

/** The path through a chart's points. */
export function usePointPath(points: readonly PathPoint[]): PointPath {
  const [active, setActive] = useState<number | null>(null);
  return { active, pick: setActive, points };
}

/**
 * A drawing whose points can be walked with the arrow keys (Home and End for the ends, Enter to follow a point), by
 * pointer or by touch. What is drawn stands for the eye; the line under it is read and heard.
 */
export function PointPathBox(props: { label: string; path: PointPath; children: ReactNode }) {
  const { points, active, pick } = props.path;
  const point = active === null ? undefined : points[active];
  const router = useRouter();
  const walk = (event: KeyboardEvent) => {
    const to = stepOf(event.key, active, points.length);
    if (to !== undefined) {
      event.preventDefault();
      pick(to);
    } else if (event.key === "Enter" && point?.href) {
      router.push(point.href);
    }
  };
  return (
    <div className="stack-tight">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for forms; this is one drawing with a path through it. */}
      <div
        role="group"
        aria-label={`${props.label}. Arrow keys lead from point to point.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the one stop of the keyboard path through the points.
        tabIndex={0}
        onKeyDown={walk}
        onFocus={() => (active === null && points.length > 0 ? pick(0) : undefined)}
      >
        <div aria-hidden="true">{props.children}</div>
      </div>
      <p className="small soft point-read" aria-live="polite">
        {point ? <Read point={point} /> : null}
      </p>
    </div>
  );
}

function Read(props: { point: PathPoint }) {
  const { words, href } = props.point;
  return (
    <>
      {words}
      {href ? (
        <>
          {" · "}
          <Link href={href}>the records behind it</Link>
        </>
      ) : null}
    </>
  );
}

function stepOf(key: string, active: number | null, length: number): number | undefined {
  if (length === 0) return undefined;
  if (key === "Home") return 0;
  if (key === "End") return length - 1;
  const forward = key === "ArrowDown" || key === "ArrowRight";
  const back = key === "ArrowUp" || key === "ArrowLeft";
  if (!forward && !back) return undefined;
  if (active === null) return forward ? 0 : length - 1;
  return Math.min(length - 1, Math.max(0, active + (forward ? 1 : -1)));
}
