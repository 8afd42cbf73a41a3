/**
 * A handle pulled by finger, mouse or keys. The job follows as a draft, at most once a frame, and becomes one change when
 * it is let go; Escape gives it up.
 */
import type { Point } from "mouldwright/curve";
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from "react";
import { dragTo, dropDraft, liftFinger, useBench } from "../../../bench/job-on-bench.ts";
import type { LengthWords } from "../../../common/length-words.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import type { Handle } from "../pull/handles.ts";
import { nudged } from "../pull/nudge.ts";
import type { Pull } from "../pull/pull.ts";
import { pulledTo } from "../pull/pull-handle.ts";
import type { ShelfRadius } from "../pull/soles.ts";
import { type BoardView, onBoard, onStick } from "./board-view.ts";
import { placeIn } from "./use-hand-on-board.ts";

export interface PullOnBoard {
  readonly handle: Handle;
  readonly says: string;
}

export interface PullWish {
  /** All that can be taken hold of: where rings lie on each other, the nearest to the finger is meant. */
  readonly handles: readonly Handle[];
  readonly placed: readonly PlacedPart[];
  readonly radii: readonly ShelfRadius[];
  readonly view: BoardView;
  readonly words: LengthWords;
}

export interface HandleHands {
  readonly onPointerDown: (event: PointerEvent<Element>) => void;
  readonly onPointerMove: (event: PointerEvent<Element>) => void;
  readonly onPointerUp: (event: PointerEvent<Element>) => void;
  readonly onPointerCancel: () => void;
  readonly onKeyDown: (event: KeyboardEvent<Element>) => void;
  readonly onBlur: () => void;
}

/** What is near draws within so many pixels. */
const DRAWS_PX = 7;
/** Keys that follow each other within this are one change, ms. */
const KEYS_REST_MS = 900;

interface Held {
  readonly pull: Pull;
  /** From the finger to the handle's own place, px: the handle does not jump under the finger. */
  readonly offset: Point;
  readonly view: BoardView;
}

export function usePull(
  board: RefObject<HTMLElement | null>,
  wish: PullWish,
): { readonly pulled: PullOnBoard | null; readonly handsOn: (handle: Handle) => HandleHands } {
  const [pulled, setPulled] = useState<PullOnBoard | null>(null);
  const held = useRef<Held | null>(null);
  const byKeys = useRef<{ readonly pull: Pull; readonly dx: number; readonly dy: number } | null>(null);
  const frame = useRef(0);
  const keysTimer = useRef(0);
  const letGo = (): void => {
    cancelAnimationFrame(frame.current);
    held.current = null;
    byKeys.current = null;
    clearTimeout(keysTimer.current);
    setPulled(null);
  };
  const finish = (handle: Handle): void => {
    letGo();
    liftFinger(`pulled: ${lowered(handle.words)}`);
  };
  useEffect(() => {
    const onEscape = (event: globalThis.KeyboardEvent): void => {
      if (event.key !== "Escape" || (held.current === null && byKeys.current === null)) return;
      event.preventDefault();
      letGo();
      dropDraft();
    };
    addEventListener("keydown", onEscape, true);
    return () => removeEventListener("keydown", onEscape, true);
  });
  const pullOf = (handle: Handle): Pull => ({
    job: useBench.getState().job,
    placed: wish.placed,
    handle,
    radii: wish.radii,
    rule: { withinMm: DRAWS_PX / wish.view.pxPerMm, ...STEPS[wish.words.unit] },
    length: wish.words.bare,
  });
  const show = (handle: Handle, to: { readonly job: Pull["job"]; readonly says: string }): void => {
    dragTo(to.job);
    setPulled({ handle, says: to.says });
  };
  const handsOn = (handle: Handle): HandleHands => ({
    onPointerDown: (event) => {
      if (event.button > 0 || board.current === null) return;
      event.stopPropagation();
      event.currentTarget.setPointerCapture(event.pointerId);
      if (byKeys.current !== null) finish(byKeys.current.pull.handle);
      const at = placeIn(board.current, event);
      const meant = nearestTo(at, wish) ?? handle;
      const own = onBoard(wish.view, meant.at);
      held.current = {
        pull: pullOf(meant),
        offset: { x: own.x - at.x, y: own.y - at.y },
        view: wish.view,
      };
      setPulled({ handle: meant, says: "" });
    },
    onPointerMove: (event) => {
      const now = held.current;
      if (now === null || board.current === null) return;
      const at = placeIn(board.current, event);
      const to = onStick(now.view, { x: at.x + now.offset.x, y: at.y + now.offset.y });
      cancelAnimationFrame(frame.current);
      frame.current = requestAnimationFrame(() => show(now.pull.handle, pulledTo(now.pull, to)));
    },
    onPointerUp: () => {
      if (held.current !== null) finish(held.current.pull.handle);
    },
    onPointerCancel: () => {
      letGo();
      dropDraft();
    },
    onKeyDown: (event) => {
      const step = stepOf(event, wish.words.unit);
      if (event.key === "Enter" && byKeys.current !== null) finish(handle);
      if (step === null) return;
      event.preventDefault();
      const before = byKeys.current ?? { pull: pullOf(handle), dx: 0, dy: 0 };
      const next = { ...before, dx: before.dx + step.x, dy: before.dy + step.y };
      byKeys.current = next;
      show(handle, nudged(next.pull, next.dx, next.dy));
      clearTimeout(keysTimer.current);
      keysTimer.current = window.setTimeout(() => finish(handle), KEYS_REST_MS);
    },
    onBlur: () => {
      if (byKeys.current !== null) finish(handle);
    },
  });
  return { pulled, handsOn };
}

function nearestTo(at: Point, { handles, view }: PullWish): Handle | null {
  let best: Handle | null = null;
  let bestPx = Number.POSITIVE_INFINITY;
  for (const handle of handles) {
    const own = onBoard(view, handle.at);
    const awayPx = Math.hypot(own.x - at.x, own.y - at.y);
    if (awayPx < bestPx) {
      best = handle;
      bestPx = awayPx;
    }
  }
  return best;
}

const STEPS = {
  mm: { fineMm: 0.1, roundMm: 0.5 },
  in: { fineMm: 25.4 / 64, roundMm: 25.4 / 16 },
} as const;

/** Arrow keys by the rule's finest step; with Shift ten times that. */
function stepOf({ key, shiftKey }: KeyboardEvent, unit: "mm" | "in"): Point | null {
  const stepMm = STEPS[unit].fineMm * (shiftKey ? 10 : 1);
  switch (key) {
    case "ArrowRight":
      return { x: stepMm, y: 0 };
    case "ArrowLeft":
      return { x: -stepMm, y: 0 };
    case "ArrowUp":
      return { x: 0, y: stepMm };
    case "ArrowDown":
      return { x: 0, y: -stepMm };
    default:
      return null;
  }
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
