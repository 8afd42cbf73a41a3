/** All that can be set on one part: its name, its sizes, how it is turned, where it stands. */

import { circleOf } from "mouldwright/curve";
import type { PartSpec } from "mouldwright/section";
import { Button, Switch } from "react-aria-components";
import { change } from "../../../bench/job-on-bench.ts";
import { FigureField } from "../../../common/figure-field.tsx";
import { useLengthWords } from "../../../common/length-words.ts";
import { TextLine } from "../../../common/text-fields.tsx";
import { TradeText } from "../../../common/trade-text.tsx";
import { piecesOf } from "../../../common/words-in-text.ts";
import { nameOfPart, withoutPart, withPart, withPartDoubled, withPartMoved } from "../chain/chain-edits.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { SIZES_OF } from "../chain/part-sizes.ts";
import { SizeField } from "./size-field.tsx";

export interface PartFormProps {
  readonly index: number;
  readonly count: number;
  readonly part: PartSpec;
  readonly place: PlacedPart | undefined;
  readonly onSelect: (index: number | null) => void;
}

/** What kind of part it is, and what that means. */
function KindWord({ kind }: { readonly kind: PartSpec["kind"] }) {
  if (piecesOf(kind).every((piece) => piece.kind === "text")) return null;
  return (
    <p className="quiet">
      <TradeText>{kind}</TradeText>
    </p>
  );
}

export function PartForm({ index, count, part, place, onSelect }: PartFormProps) {
  const name = nameOfPart(part);
  const set = (what: string, next: PartSpec): void =>
    change(`${name}: ${what}`, (job) => withPart(job, index, next));
  const move = (to: number): void => {
    change(`${name} moved`, (job) => withPartMoved(job, index, to));
    onSelect(Math.max(0, Math.min(count - 1, to)));
  };
  return (
    <div className="part-form">
      <KindWord kind={part.kind} />
      <div className="part-sizes">
        {part.kind === "fillet" ? (
          <FilletWidth part={part} place={place} set={set} />
        ) : (
          SIZES_OF[part.kind].map((size) => (
            <SizeField
              key={size.key}
              part={part}
              size={size}
              wouldBe={(key) => wouldBe(key, part, place)}
              onChange={set}
            />
          ))
        )}
        <Turned index={index} part={part} place={place} set={set} />
        <NameField part={part} set={set} />
      </div>
      {part.kind === "free curve" ? (
        <p className="quiet">A free curve is held as it was drawn. To change it, draw over it by hand.</p>
      ) : null}
      <div className="tools">
        <Button className="button small" onPress={() => move(index - 1)} isDisabled={index === 0}>
          Earlier
        </Button>
        <Button className="button small" onPress={() => move(index + 1)} isDisabled={index === count - 1}>
          Later
        </Button>
        <Button
          className="button small"
          onPress={() => {
            const widthMm = place === undefined ? 4 : place.to.x - place.from.x;
            change(`${name} doubled`, (job) => withPartDoubled(job, index, widthMm));
            onSelect(index + 1);
          }}
        >
          Double
        </Button>
        <Button
          className="button small"
          isDisabled={count === 1}
          onPress={() => {
            change(`${name} taken out`, (job) => withoutPart(job, index));
            onSelect(null);
          }}
        >
          Take out
        </Button>
      </div>
    </div>
  );
}

interface Own<Part extends PartSpec = PartSpec> {
  readonly part: Part;
  readonly place: PlacedPart | undefined;
  readonly set: (what: string, next: PartSpec) => void;
}

/** One fillet of a chain may take what is left of the width. */
function FilletWidth({ part, place, set }: Own<Extract<PartSpec, { kind: "fillet" }>>) {
  const widthMm = place === undefined ? 4 : Math.hypot(place.to.x - place.from.x, place.to.y - place.from.y);
  const takesRest = part.widthMm === "rest";
  return (
    <>
      {part.widthMm === "rest" ? null : (
        <SizeField
          part={part}
          size={SIZES_OF.fillet[0] as (typeof SIZES_OF)["fillet"][number]}
          wouldBe={() => widthMm}
          onChange={set}
        />
      )}
      <Switch
        className="switch"
        isSelected={takesRest}
        onChange={(rest) => {
          const all = { ...part, widthMm: rest ? ("rest" as const) : Math.max(0.1, rounded(widthMm)) };
          set(rest ? "takes the rest" : "a width of its own", all);
        }}
      >
        <span className="switch-track" />
        Takes the rest of the width
      </Switch>
    </>
  );
}

function Turned({ index, part, place, set }: Own & { readonly index: number }) {
  const { degrees } = useLengthWords();
  if (part.kind === "running arc") return null;
  const { smooth, leanDeg, ...plain } = part;
  const turn = smooth === true ? "smooth" : leanDeg === undefined ? "level" : "lean";
  return (
    <div className="turned">
      {index === 0 ? null : (
        <Switch
          className="switch"
          isSelected={turn === "smooth"}
          onChange={(runsOn) =>
            set(runsOn ? "runs on smoothly" : "level", runsOn ? { ...plain, smooth: true } : plain)
          }
        >
          <span className="switch-track" />
          Runs on smoothly from the part before
        </Switch>
      )}
      {turn === "smooth" ? (
        <p className="quiet">Turned by {degrees(((place?.turnedRad ?? 0) * 180) / Math.PI)} for it.</p>
      ) : (
        <FigureField
          label="Turned, anticlockwise"
          value={leanDeg ?? 0}
          least={-180}
          most={180}
          unit="°"
          onChange={(next) => set("turned", next === 0 ? plain : { ...plain, leanDeg: next })}
        />
      )}
    </div>
  );
}

function NameField({ part, set }: Omit<Own, "place">) {
  const { name: own } = part;
  return (
    <TextLine
      label="Name"
      value={own ?? ""}
      placeholder={part.kind}
      mostCharacters={80}
      onChange={(name) => {
        const { name: _, ...rest } = part;
        set("named", name === "" ? rest : { ...part, name });
      }}
    />
  );
}

/** What a size is on the drawing where the part does not give it. */
function wouldBe(key: string, part: PartSpec, place: PlacedPart | undefined): number {
  const arc = place?.pieces.find((piece) => piece.kind === "arc");
  switch (key) {
    case "radiusMm":
      return arc?.kind === "arc" ? rounded(circleOf(arc).radiusMm + 0.04) : 6;
    case "smallRadiusMm":
      return "acrossMm" in part ? rounded(part.acrossMm / 3) : 3;
    case "riseMm":
      return "acrossMm" in part ? -part.acrossMm : -2;
    case "count":
      return place?.pieces.filter((piece) => piece.kind === "arc").length ?? 3;
    default:
      return 1;
  }
}

function rounded(valueMm: number): number {
  return Math.round(valueMm * 10) / 10;
}
