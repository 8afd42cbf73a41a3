/** Slopes: a moulding up a gable, a hip, a box with sloping sides; what the saw is set to for each. */
import type { Hip, Hopper, Rake } from "mouldwright/making";
import { DrawingView } from "../../common/drawing-view.tsx";
import { sizesInWords, useLengthWords } from "../../common/length-words.ts";
import type { SlopesAnswer } from "../../fitting/slopes-answer.ts";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { cutSentence, sawDegrees } from "./saw-words.ts";
import { SlopesInputs } from "./slopes-inputs.tsx";

export function SlopesPage() {
  return (
    <FitLayout
      page="slopes"
      inputs={<SlopesInputs />}
      first={(answer) => <SlopingWords answer={answer} />}
      more={(answer) => (
        <>
          <div className="fit-picture">
            <DrawingView drawing={answer.picture} />
          </div>
          <Notes warnings={answer.warnings} assumed={answer.assumed} />
          <Cautions cautions={answer.cautions} />
        </>
      )}
    />
  );
}

function SlopingWords({ answer: { sloping } }: { readonly answer: SlopesAnswer }) {
  switch (sloping.shown) {
    case "rake":
      return <RakeWords rake={sloping.rake} />;
    case "hip":
      return <HipWords hip={sloping.hip} />;
    case "box":
      return <BoxWords box={sloping.box} />;
  }
}

/** Three sections, and the cuts at foot, head and apex. */
function RakeWords({ rake }: { readonly rake: Rake }) {
  const words = useLengthWords();
  const members = [
    ["Level", rake.level],
    ["Up the slope", rake.rake],
    ["Upper return", rake.upperReturn],
  ] as const;
  const cuts = [
    ["Level moulding at the foot", rake.cuts.levelAtFoot],
    ["Sloping one at the foot", rake.cuts.rakeAtFoot],
    ["Sloping one at the head", rake.cuts.rakeAtHead],
    ["Upper return", rake.cuts.upperReturnAtHead],
    ["Sloping one at the apex", rake.cuts.rakeAtApex],
  ] as const;
  const bent = rake.rake.lostArcs.length + rake.upperReturn.lostArcs.length;
  return (
    <>
      <Figures>
        {members.map(([name, { projectionMm, heightMm }]) => (
          <Figure key={name} name={`${name}: comes out × high`}>
            {sizesInWords([projectionMm, heightMm], words)}
          </Figure>
        ))}
      </Figures>
      <p>
        Each of the three needs a section of its own for their faces to meet.
        {bent === 0 ? "" : " Its circles become parts of ovals there: planes come near them, not onto them."}
      </p>
      <ul className="fit-lines figures">
        {cuts.map(([name, cut]) => (
          <li key={name}>
            {name}: mitre {sawDegrees(cut.mitreDeg)}, bevel {sawDegrees(cut.bevelDeg)}.{" "}
            {cutSentence(cut, "flat")}
          </li>
        ))}
      </ul>
    </>
  );
}

function HipWords({ hip }: { readonly hip: Hip }) {
  const sides = hip.main.slopeDeg === hip.adjacent.slopeDeg && hip.main.planDeg === hip.adjacent.planDeg;
  const named = sides
    ? ([["Both sides", hip.main]] as const)
    : ([
        ["Main side", hip.main],
        ["Other side", hip.adjacent],
      ] as const);
  return (
    <>
      <Figures>
        <Figure name="The hip rises at">{sawDegrees(hip.hipDeg)}</Figure>
        <Figure name="Length of the hip, for each run of the main side">
          × {hip.lengthPerRun.toFixed(3)}
        </Figure>
      </Figures>
      <ul className="fit-lines figures">
        {named.map(([name, side]) => (
          <li key={name}>
            {name}: bevel the hip’s top by {sawDegrees(side.backingDeg)}; boards that run level along it end
            in a cut swung {sawDegrees(side.jackSideCutDeg)} from square; in plan the hip lies{" "}
            {sawDegrees(side.planDeg)} from the eaves.
          </li>
        ))}
      </ul>
    </>
  );
}

function BoxWords({ box }: { readonly box: Hopper }) {
  const { length } = useLengthWords();
  return (
    <>
      <Figures>
        <Figure name="Mitre">{sawDegrees(box.mitreDeg)}</Figure>
        <Figure name="Bevel">{sawDegrees(box.bevelDeg)}</Figure>
        {box.side === null ? null : (
          <>
            <Figure name="Narrow edge">{length(box.side.narrowEdgeMm)}</Figure>
            <Figure name="Wide edge">{length(box.side.wideEdgeMm)}</Figure>
            <Figure name="Stands high">{length(box.side.heightMm)}</Figure>
          </>
        )}
      </Figures>
      <p className="figures">
        Laid on its inside, outside up. Between two faces {sawDegrees(box.betweenFacesDeg)}; butted instead of
        mitred the blade leans {sawDegrees(box.buttBevelDeg)}.
      </p>
    </>
  );
}
