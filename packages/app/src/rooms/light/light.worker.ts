/** Light on the sections away from the screen: built once, looked at as often as the lamp is moved. */
import { sectionOfJob } from "mouldwright/job";
import { DRAWING_LAMP, type Hanging, type Lamp, sectionInLight, tonesOf } from "mouldwright/light";
import { cataloguedTrouble, fine, type Outcome, refused, type Trouble } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { hangingFor } from "./look.ts";
import type { FromLight, Look, SeenVersion, SolidWish, ToLight } from "./messages.ts";
import { mitredLength } from "./mitred-length.ts";

let sections: readonly Outcome<Section>[] = [];

addEventListener("message", ({ data }: MessageEvent<ToLight>) => {
  switch (data.kind) {
    case "versions":
      sections = data.jobs.map((job) => withoutFaults(() => sectionOfJob(job)));
      break;
    case "look":
      look(data);
      break;
    case "solid":
      makeSolid(data);
  }
});

function look({ wish, lamp, hanging }: Look): void {
  const versions = sections.map((section): SeenVersion => {
    const lit = withoutFaults(() => litOf(section, lamp, hanging));
    return lit.ok
      ? { ok: true, lit: lit.value, tones: tonesOf(lit.value) }
      : { ok: false, troubles: troublesOf(lit) };
  });
  send({ kind: "seen", wish, versions });
}

function makeSolid({ wish, hanging, corner }: SolidWish): void {
  const [section] = sections;
  if (section === undefined) return;
  const made = withoutFaults(() => {
    const lit = litOf(section, DRAWING_LAMP, hanging);
    return lit.ok ? fine(mitredLength(lit.value, corner)) : lit;
  });
  send({
    kind: "solid",
    wish,
    solid: made.ok ? made.value : null,
    troubles: made.ok ? [] : troublesOf(made),
  });
}

function litOf(section: Outcome<Section>, lamp: Lamp, hanging: Hanging | null) {
  return section.ok ? sectionInLight(section.value, lamp, hangingFor(section.value, hanging)) : section;
}

function troublesOf(outcome: Outcome<unknown> & { readonly ok: false }): readonly Trouble[] {
  return [outcome.trouble, ...(outcome.more ?? [])];
}

/** A mistake of our own is told, not lost in the worker. */
function withoutFaults<Value>(make: () => Outcome<Value>): Outcome<Value> {
  try {
    return make();
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return refused(cataloguedTrouble("internal", "", { detail }));
  }
}

function send(message: FromLight): void {
  postMessage(message);
}
