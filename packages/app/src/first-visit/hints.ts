/** The four hints of the first visit, in the order of the work. Pure: what is done, what comes next. */

export const HINT_IDS = ["size", "answer", "cuts", "sheet"] as const;
export type HintId = (typeof HINT_IDS)[number];

export interface Hint {
  readonly id: HintId;
  /** The room in which it is done. */
  readonly room: "section" | "cuts" | "sheets";
  readonly roomName: string;
  readonly title: string;
  readonly says: string;
}

export const HINTS: readonly Hint[] = [
  {
    id: "size",
    room: "section",
    roomName: "Section",
    title: "Change a size.",
    says: "Pull one of the handles on the drawing, or open a part in the list and type another size. Undo brings it back.",
  },
  {
    id: "answer",
    room: "section",
    roomName: "Section",
    title: "Read the shelf’s answer.",
    says: "One line says whether the planes on the shelf can make it. With each part stand its planes, or what would help.",
  },
  {
    id: "cuts",
    room: "cuts",
    roomName: "Cuts",
    title: "Turn the cuts.",
    says: "One page is one cut: what to set, which plane, when to stop. Turn a page with the arrow, a key or a finger.",
  },
  {
    id: "sheet",
    room: "sheets",
    roomName: "Sheets",
    title: "Print a sheet.",
    says: "Card, full-size templates and story stick, for the bench. Print them, or save the PDF.",
  },
];

export interface HintState {
  readonly done: readonly HintId[];
  /** Put away by the maker, or all done: never shown again. */
  readonly isClosed: boolean;
}

export const NO_HINTS: HintState = { done: [], isClosed: true };
export const FRESH_HINTS: HintState = { done: [], isClosed: false };

/** The next hint to show; null when there is none, or they were put away. */
export function nextHint({ done, isClosed }: HintState): Hint | null {
  return isClosed ? null : (HINTS.find(({ id }) => !done.includes(id)) ?? null);
}

/** A maker who goes ahead by themselves has done the hint, whichever stands open. */
export function withDone(state: HintState, id: HintId): HintState {
  return state.isClosed || state.done.includes(id) ? state : { ...state, done: [...state.done, id] };
}

/** What the store remembers, which may be anything; null if it remembers no hints. */
export function hintStateOf(remembered: unknown): HintState | null {
  if (typeof remembered !== "object" || remembered === null) return null;
  const { done, isClosed } = remembered as Readonly<Record<string, unknown>>;
  if (!Array.isArray(done) || typeof isClosed !== "boolean") return null;
  return { done: HINT_IDS.filter((id) => done.includes(id)), isClosed };
}
