/** A length of the moulding with its corner, to be turned by finger, mouse and keys, in the light of the same lamp. */
import type { Hanging, Lamp } from "mouldwright/light";
import type { Trouble } from "mouldwright/measure";
import { type PointerEvent, useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import type { Corner, TurnedSolid } from "./messages.ts";
import { isTurnKey, nearer, type Turn, type TurnKey, turnedBy, turnedByKey } from "./turn.ts";
import { TurnSign } from "./turn-signs.tsx";
import { openScene, type TurningScene } from "./turning-scene.ts";

export interface TurningViewProps {
  readonly solid: TurnedSolid | null;
  readonly troubles: readonly Trouble[];
  readonly lamp: Lamp;
  readonly run: Hanging["run"];
  readonly corner: Corner;
  readonly onCorner: (corner: Corner) => void;
}

const CORNERS = {
  level: [
    { value: "outside", words: "Outside corner" },
    { value: "inside", words: "Inside corner" },
    { value: "none", words: "Straight" },
  ],
  upright: [
    { value: "outside", words: "Corner" },
    { value: "none", words: "Straight" },
  ],
} as const;

const BUTTONS: readonly { readonly key: TurnKey; readonly words: string }[] = [
  { key: "ArrowLeft", words: "More from the left" },
  { key: "ArrowRight", words: "More from the right" },
  { key: "ArrowUp", words: "More from above" },
  { key: "ArrowDown", words: "More from below" },
  { key: "+", words: "Nearer" },
  { key: "-", words: "Further off" },
];

/** Where the eye stands at first: the corner in sight. */
function firstTurn(run: Hanging["run"], corner: Corner): Turn {
  if (run === "upright") return { yawDeg: 25, pitchDeg: 12, zoomRatio: 1 };
  return { yawDeg: corner === "inside" ? -40 : corner === "outside" ? 40 : 22, pitchDeg: -8, zoomRatio: 1 };
}

const WHEEL_RATIO = 1.0015;

export function TurningView({ solid, troubles, lamp, run, corner, onCorner }: TurningViewProps) {
  const stage = useRef<HTMLDivElement>(null);
  const shown = run === "upright" && corner === "inside" ? "outside" : corner;
  const [turn, setTurn] = useState(() => firstTurn(run, shown));
  const { scene, cannot } = useScene(stage);
  const pointers = usePinch(setTurn);
  useEffect(() => setTurn(firstTurn(run, shown)), [run, shown]);
  useEffect(() => {
    if (solid !== null) scene?.showSolid(solid);
  }, [scene, solid]);
  useEffect(() => scene?.shine(lamp), [scene, lamp]);
  useEffect(() => scene?.turn(turn), [scene, turn]);
  useWheel(stage, setTurn);
  if (cannot) {
    return (
      <p className="trouble" role="alert">
        <strong>This browser cannot turn the moulding: it shows no solid pictures (WebGL).</strong> The view
        from the front is exact without it. For the turning view switch on hardware acceleration in the
        browser’s settings, or open the job in another browser.
      </p>
    );
  }
  return (
    <div className="turning">
      <TroubleWords troubles={troubles} />
      <div
        ref={stage}
        className="turning-stage"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned by the arrow keys, and says so.
        tabIndex={0}
        aria-label="The moulding to be turned: arrow keys turn it, plus and minus bring it nearer and further off"
        onKeyDown={(event) => {
          const { key } = event;
          if (!isTurnKey(key)) return;
          event.preventDefault();
          setTurn((before) => turnedByKey(before, key));
        }}
        {...pointers}
      />
      <div className="turning-tools">
        <Choice label="Corner" value={shown} options={CORNERS[run]} onChange={onCorner} />
        <div className="turning-buttons">
          {BUTTONS.map(({ key, words }) => (
            <Button
              key={key}
              className="icon-button turning-button"
              aria-label={words}
              onPress={() => setTurn((before) => turnedByKey(before, key))}
            >
              <TurnSign turn={key} />
            </Button>
          ))}
          <Button
            className="icon-button turning-button"
            aria-label="As at first"
            onPress={() => setTurn(firstTurn(run, shown))}
          >
            <TurnSign turn="first" />
          </Button>
        </div>
      </div>
      <p className="quiet">
        Drag to turn it, two fingers or the wheel to come nearer. Shadows here are a picture; the view from
        the front has them exactly.
      </p>
    </div>
  );
}

/** The scene on its stage; gone with it. */
function useScene(stage: React.RefObject<HTMLDivElement | null>) {
  const [scene, setScene] = useState<TurningScene | null>(null);
  const [cannot, setCannot] = useState(false);
  useEffect(() => {
    const element = stage.current;
    if (element === null) return;
    const opened = opened3d(element);
    if (opened === null) {
      setCannot(true);
      return;
    }
    const observer = new ResizeObserver(() => {
      opened.resize(element.clientWidth, element.clientHeight, Math.min(devicePixelRatio, 2));
    });
    observer.observe(element);
    setScene(opened);
    return () => {
      observer.disconnect();
      opened.close();
      setScene(null);
    };
  }, [stage]);
  return { scene, cannot };
}

function opened3d(element: HTMLElement): TurningScene | null {
  try {
    return openScene(element);
  } catch {
    return null;
  }
}

/** The wheel comes nearer instead of moving the page; React listens passively, which cannot hold the page. */
function useWheel(
  stage: React.RefObject<HTMLDivElement | null>,
  setTurn: (edit: (turn: Turn) => Turn) => void,
) {
  useEffect(() => {
    const element = stage.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      setTurn((before) => nearer(before, WHEEL_RATIO ** -event.deltaY));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [stage, setTurn]);
}

/** One finger turns, two come nearer or go further off. */
function usePinch(setTurn: (edit: (turn: Turn) => Turn) => void) {
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const lift = (event: PointerEvent): void => {
    fingers.current.delete(event.pointerId);
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLDivElement>): void => {
      event.currentTarget.setPointerCapture(event.pointerId);
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>): void => {
      const before = fingers.current.get(event.pointerId);
      if (before === undefined) return;
      const now = { x: event.clientX, y: event.clientY };
      const others = [...fingers.current].filter(([id]) => id !== event.pointerId);
      const other = others[0]?.[1];
      fingers.current.set(event.pointerId, now);
      if (other === undefined) {
        setTurn((turn) => turnedBy(turn, now.x - before.x, now.y - before.y));
        return;
      }
      const apartBefore = Math.hypot(before.x - other.x, before.y - other.y);
      const apart = Math.hypot(now.x - other.x, now.y - other.y);
      if (apartBefore > 0) setTurn((turn) => nearer(turn, apart / apartBefore));
    },
    onPointerUp: lift,
    onPointerCancel: lift,
  };
}
