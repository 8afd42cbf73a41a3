/** Drawings and solids for other programs and machines, each saved when it is asked for. */
import type { Plan } from "mouldwright/cutting";
import { stemOf } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { useState } from "react";
import { Button } from "react-aria-components";
import { LengthField } from "../../common/length-field.tsx";
import { saveFile } from "../../common/save-file.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { OTHER_FILES, type OtherFile, SOLID_LENGTH_MM } from "./other-files.ts";
import type { Writer } from "./writer.ts";

export interface OtherFilesPanelProps {
  readonly plan: Plan;
  readonly writer: () => Writer;
}

export function OtherFilesPanel({ plan, writer }: OtherFilesPanelProps) {
  const [lengthMm, setLengthMm] = useState<number>(SOLID_LENGTH_MM.usual);
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const [saved, setSaved] = useState("");
  const save = async (file: OtherFile): Promise<void> => {
    setTroubles([]);
    setSaved("");
    const answer = await writer().writeOther(plan, file.kind, lengthMm);
    if (answer.kind === "refused") {
      setTroubles(answer.troubles);
      return;
    }
    const name = `${stemOf(plan.name)}${file.ending}`;
    saveFile(name, new Blob([answer.bytes], { type: file.type }));
    setSaved(`${name} is saved.`);
  };
  return (
    <>
      <ul className="other-files">
        {OTHER_FILES.map((file) => (
          <li key={file.kind}>
            <Button className="button" aria-label={`Save ${file.name}`} onPress={() => void save(file)}>
              {file.name}
            </Button>
            <span className="quiet">{file.says}</span>
          </li>
        ))}
      </ul>
      <LengthField
        label="Length of moulding and sanding block"
        valueMm={lengthMm}
        onChange={setLengthMm}
        leastMm={SOLID_LENGTH_MM.least}
        mostMm={SOLID_LENGTH_MM.most}
      />
      <TroubleWords troubles={troubles} />
      <p className="quiet" aria-live="polite">
        {saved}
      </p>
    </>
  );
}
