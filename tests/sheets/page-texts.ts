/** Lettering of a page as boxes on its paper, worked out here once more from the groups that it stands in. */
import type { Item, Page, Text } from "../../packages/core/src/sheets/index.ts";
import { letterWidthRatio } from "../../packages/core/src/sheets/index.ts";

export interface PlacedText {
  readonly words: string;
  readonly sizeMm: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

type Place = (x: number, y: number) => readonly [number, number];

/** What DejaVu Sans Condensed reaches above and below its base line for capitals, figures and tails, as ratios of its size. */
const ASCENT = 0.76;
const DESCENT = 0.24;
const UNKNOWN_WIDTH = 0.9;

/** Every piece of lettering, in the millimetres that the printer makes: before the sheet's correction. */
export function textsOnPage(page: Page): readonly PlacedText[] {
  return page.items.flatMap((item) => textsIn(item, (x, y) => [x, y], 1));
}

function textsIn(item: Item, place: Place, scale: number): readonly PlacedText[] {
  if (item.kind === "text") return [boxed(item, place, scale)];
  if (item.kind !== "group") return [];
  const { moveMm, turnDeg, scaleRatio } = item;
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  const inner: Place = (x, y) =>
    place(moveMm[0] + (x * cos + y * sin) * scaleRatio, moveMm[1] + (y * cos - x * sin) * scaleRatio);
  return item.items.flatMap((one) => textsIn(one, inner, scale * scaleRatio));
}

function boxed(item: Text, place: Place, scale: number): PlacedText {
  const weight = item.bold ? "bold" : "regular";
  const wide = [...item.text].reduce(
    (sum, letter) => sum + (letterWidthRatio(letter.codePointAt(0) ?? 0, weight) ?? UNKNOWN_WIDTH),
    0,
  );
  const widthMm = wide * item.sizeMm;
  const left = item.anchor === "start" ? 0 : item.anchor === "middle" ? -widthMm / 2 : -widthMm;
  const cos = Math.cos((item.turnDeg * Math.PI) / 180);
  const sin = Math.sin((item.turnDeg * Math.PI) / 180);
  const corners = [left, left + widthMm].flatMap((x) =>
    [-ASCENT * item.sizeMm, DESCENT * item.sizeMm].map((y) =>
      place(item.at[0] + x * cos + y * sin, item.at[1] + y * cos - x * sin),
    ),
  );
  return {
    words: item.text,
    sizeMm: item.sizeMm * scale,
    minX: Math.min(...corners.map(([x]) => x)),
    maxX: Math.max(...corners.map(([x]) => x)),
    minY: Math.min(...corners.map(([, y]) => y)),
    maxY: Math.max(...corners.map(([, y]) => y)),
  };
}

/** No printer prints nearer to the edge than this, mm. */
const EDGE_MM = 6;
/** A hair of the box, where nothing is drawn. */
const SLACK_MM = 0.1;

/** What is wrong with the lettering of a page, in words; nothing if all is well. */
export function troublesOn(page: Page): readonly string[] {
  const texts = textsOnPage(page).filter(({ words }) => words.trim() !== "");
  const widthMm = page.widthMm / (page.stretch?.acrossRatio ?? 1);
  const heightMm = page.heightMm / (page.stretch?.upRatio ?? 1);
  const outside = texts
    .filter(
      (box) =>
        box.minX < EDGE_MM ||
        box.minY < EDGE_MM ||
        box.maxX > widthMm - EDGE_MM ||
        box.maxY > heightMm - EDGE_MM,
    )
    .map(({ words }) => `leaves the page: ${words}`);
  const touching = texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .filter(
        (b) =>
          a.minX < b.maxX - SLACK_MM &&
          b.minX < a.maxX - SLACK_MM &&
          a.minY < b.maxY - SLACK_MM &&
          b.minY < a.maxY - SLACK_MM,
      )
      .map((b) => `“${a.words}” touches “${b.words}”`),
  );
  return [...outside, ...touching];
}
