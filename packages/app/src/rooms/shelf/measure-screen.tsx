/** The screen's scale, once: a bank card, or a rule, is held to what is drawn until both are one size. */
import { useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import {
  CARD_MM,
  LEAST_PX_PER_MM,
  MOST_PX_PER_MM,
  setScreenScale,
  USUAL_PX_PER_MM,
  useScreenScale,
} from "./screen-scale.ts";

const AGAINST = [
  { value: "card", words: "A bank card" },
  { value: "rule", words: "A rule" },
] as const;

/** The bar that a rule is held to, mm. */
const BAR_MM = 80;
const RADIUS_MM = 3.18;
/** One press, pixels on the whole card. */
const NUDGE_PX = 1;

export function MeasureScreen({ onDone }: { readonly onDone: () => void }) {
  const kept = useScreenScale();
  const [pxPerMm, setPxPerMm] = useState(kept ?? USUAL_PX_PER_MM);
  const [against, setAgainst] = useState<(typeof AGAINST)[number]["value"]>("card");
  const spanMm = against === "card" ? CARD_MM.width : BAR_MM;
  const set = (next: number): void => setPxPerMm(Math.min(MOST_PX_PER_MM, Math.max(LEAST_PX_PER_MM, next)));
  return (
    <div className="measure-screen">
      <p>
        So that arcs are drawn at full size the program has to know this screen. Hold{" "}
        {against === "card" ? "a bank card" : `${BAR_MM} mm of a rule`} to what is drawn and make both the
        same size. It is kept in this browser; the page’s zoom must then stay as it is.
      </p>
      <Choice label="Measure against" value={against} options={AGAINST} onChange={setAgainst} />
      <div className="screen-span">
        {against === "card" ? (
          <div
            className="screen-card"
            style={{
              width: `${CARD_MM.width * pxPerMm}px`,
              height: `${CARD_MM.height * pxPerMm}px`,
              borderRadius: `${RADIUS_MM * pxPerMm}px`,
            }}
          >
            Lay the card here
          </div>
        ) : (
          <div className="screen-bar" style={{ width: `${BAR_MM * pxPerMm}px` }}>
            {BAR_MM} mm
          </div>
        )}
      </div>
      <div className="arc-steps">
        <Button className="button" onPress={() => set(pxPerMm - NUDGE_PX / spanMm)}>
          Smaller
        </Button>
        <Button className="button" onPress={() => set(pxPerMm + NUDGE_PX / spanMm)}>
          Larger
        </Button>
      </div>
      <input
        className="arc-slider"
        type="range"
        aria-label="Size on the screen"
        min={LEAST_PX_PER_MM * spanMm}
        max={MOST_PX_PER_MM * spanMm}
        step={NUDGE_PX}
        value={pxPerMm * spanMm}
        onChange={({ target }) => set(Number(target.value) / spanMm)}
      />
      <div className="tools">
        <Button
          className="button button-main"
          onPress={() => {
            setScreenScale(pxPerMm);
            onDone();
          }}
        >
          Both are the same size
        </Button>
      </div>
    </div>
  );
}
