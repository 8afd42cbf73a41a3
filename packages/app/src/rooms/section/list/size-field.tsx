/** One size of a part, as its kind asks for it. */
import type { PartSpec } from "mouldwright/section";
import { Button } from "react-aria-components";
import { Choice } from "../../../common/choice.tsx";
import { FigureField } from "../../../common/figure-field.tsx";
import { LengthField } from "../../../common/length-field.tsx";
import { type PartSize, sizeOf, withSize } from "../chain/part-sizes.ts";

export interface SizeFieldProps {
  readonly part: PartSpec;
  readonly size: PartSize;
  /** What a size would be that the part does not give: put in when the maker wants his own. */
  readonly wouldBe: (key: string) => number;
  readonly onChange: (what: string, part: PartSpec) => void;
}

export function SizeField({ part, size, wouldBe, onChange }: SizeFieldProps) {
  const value = sizeOf(part, size.key);
  const set = (next: number | string | undefined): void =>
    onChange(lowered(size.words), withSize(part, size.key, next));
  switch (size.kind) {
    case "length": {
      const { words, leastMm, mostMm, isSigned, absent } = size;
      if (typeof value !== "number") {
        return <Absent words={words} absent={absent ?? "none"} onGive={() => set(wouldBe(size.key))} />;
      }
      const field = (
        <LengthField
          label={words}
          valueMm={value}
          leastMm={leastMm}
          mostMm={mostMm}
          isSigned={isSigned === true}
          onChange={set}
        />
      );
      return absent === undefined ? (
        field
      ) : (
        <div className="given">
          {field}
          <TakeAway words={words} absent={absent} onPress={() => set(undefined)} />
        </div>
      );
    }
    case "angle":
      return (
        <FigureField
          label={size.words}
          value={typeof value === "number" ? value : (size.absentDeg ?? 0)}
          least={size.leastDeg}
          most={size.mostDeg}
          unit="°"
          onChange={set}
        />
      );
    case "count":
      if (typeof value !== "number") {
        return (
          <Absent
            words={size.words}
            absent={size.absent ?? "none"}
            onGive={() => set(Math.max(1, Math.round(wouldBe(size.key))))}
          />
        );
      }
      return (
        <div className={size.absent === undefined ? "" : "given"}>
          <FigureField
            label={size.words}
            value={value}
            unit=""
            least={1}
            most={size.most}
            isWhole
            onChange={set}
          />
          {size.absent === undefined ? null : (
            <TakeAway words={size.words} absent={size.absent} onPress={() => set(undefined)} />
          )}
        </div>
      );
    case "share":
      return (
        <FigureField
          label={size.words}
          value={(typeof value === "number" ? value : size.absentRatio) * 100}
          least={5}
          most={95}
          unit="%"
          onChange={(percent) => set(percent / 100)}
        />
      );
    case "choice":
      return (
        <div className="field">
          <span className="field-label">{size.words}</span>
          <Choice
            label={size.words}
            value={typeof value === "string" ? value : size.absent}
            options={size.options}
            onChange={(chosen) => set(chosen)}
          />
        </div>
      );
  }
}

interface AbsentProps {
  readonly words: string;
  readonly absent: string;
  readonly onGive: () => void;
}

function Absent({ words, absent, onGive }: AbsentProps) {
  return (
    <div className="field absent">
      <span className="field-label">{words}</span>
      <Button
        className="button absent-button"
        onPress={onGive}
        aria-label={`${words}: ${absent}. Give your own`}
      >
        {absent}
      </Button>
    </div>
  );
}

interface TakeAwayProps {
  readonly words: string;
  readonly absent: string;
  readonly onPress: () => void;
}

function TakeAway({ words, absent, onPress }: TakeAwayProps) {
  return (
    <Button className="icon-button take-away" onPress={onPress} aria-label={`${words}: ${absent} instead`}>
      <svg className="sign" viewBox="0 0 24 24" aria-hidden="true">
        <path d="M7 7l10 10M17 7l-10 10" />
      </svg>
    </Button>
  );
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
