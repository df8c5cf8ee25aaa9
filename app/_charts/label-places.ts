import { textWidth } from "./chart-text";

/** A point with a label to be placed, in pixels; those with `first` choose their places before the others. */
export type LabelledPoint = {
  readonly x: number;
  readonly y: number;
  readonly label: string;
  readonly first: boolean;
};

/** Where a label is written; `leader` where it stands so far off that a line has to lead to it. */
export type LabelPlace = {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "end";
  readonly leader: boolean;
};

type Box = { left: number; right: number; top: number; bottom: number };

/**
 * A place for each label: right of its point, else moved up or down or to the left until it is free of the other
 * labels and points.
 * @param room the box, in pixels, that labels stay inside.
 * @returns places in the order of the points; null where none is free.
 */
export function labelPlaces(points: readonly LabelledPoint[], room: Box): (LabelPlace | null)[] {
  const taken: Box[] = points.map(({ x, y }) => around(x, y));
  const places = new Map<LabelledPoint, LabelPlace>();
  for (const point of [...points].sort((one, other) => Number(other.first) - Number(one.first))) {
    const width = textWidth([point.label]) - 14;
    const free = candidates(point).find((place) => {
      const box = boxOf(place, width);
      return within(box, room) && !taken.some((other) => overlap(box, other));
    });
    if (!free) continue;
    places.set(point, free);
    taken.push(boxOf(free, width));
  }
  return points.map((point) => places.get(point) ?? null);
}

function candidates({ x, y }: LabelledPoint): LabelPlace[] {
  const near = [0, -8, 8].flatMap((dy) => sides(x, y, dy, 9, false));
  const far = [-17, 17, -26, 26, -35, 35].flatMap((dy) => sides(x, y, dy, 12, true));
  return [...near, ...far];
}

function sides(x: number, y: number, dy: number, dx: number, leader: boolean): LabelPlace[] {
  return [
    { x: x + dx, y: y + dy, anchor: "start", leader },
    { x: x - dx, y: y + dy, anchor: "end", leader },
  ];
}

function around(x: number, y: number): Box {
  return { left: x - 6, right: x + 6, top: y - 6, bottom: y + 6 };
}

function boxOf(place: LabelPlace, width: number): Box {
  const left = place.anchor === "start" ? place.x : place.x - width;
  return { left, right: left + width, top: place.y - 7, bottom: place.y + 7 };
}

function within(box: Box, room: Box): boolean {
  return (
    box.left >= room.left &&
    box.right <= room.right &&
    box.top >= room.top &&
    box.bottom <= room.bottom
  );
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.left < other.right &&
    other.left < one.right &&
    one.top < other.bottom &&
    other.top < one.bottom
  );
}
