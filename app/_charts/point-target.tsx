/** What the pointer and the finger meet at a point, and the ring about the point that is read. */
export function PointTarget(props: { x: number; y: number; active: boolean; pick: () => void }) {
  const { x, y, active, pick } = props;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard path is the drawing's own (PointPathBox).
    <circle
      cx={x}
      cy={y}
      r={11}
      fill="transparent"
      stroke={active ? "var(--ink)" : "none"}
      strokeWidth={1.5}
      onMouseEnter={pick}
      onClick={pick}
    />
  );
}
