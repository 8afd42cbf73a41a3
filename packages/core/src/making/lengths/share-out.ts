/** Pieces marked along real sticks: fewest sticks, neighbours together, shortest sticks. */
import { cataloguedTrouble, fine, type Outcome, refused, type TroubleCode } from "../../measure/index.ts";
import { SHORT_AT_THE_SAW_MM } from "../fit/index.ts";
import { allowancesOf, questionTrouble } from "./checks.ts";
import { fewestSticks, type StickRoom, type StretchPlace } from "./choose-sticks.ts";
import { LENGTHS_SEARCH } from "./defaults.ts";
import { type CountedPiece, inOrder, markStretch } from "./marking.ts";
import { type MeetingRun, meetingsOf } from "./neighbours.ts";
import { at, sum, tightestFor } from "./packing.ts";
import { type PickedSet, pickSet } from "./pick-set.ts";
import { inSteps, type SoundStretch, soundStretches, stepsToMm } from "./stretches.ts";
import {
  type BadPlace,
  LENGTHS_CONVENTION,
  type LengthsAllowances,
  type LengthsQuestion,
  type LengthsTrouble,
  type MarkedStick,
  type SharedOut,
} from "./types.ts";

/**
 * Marks the pieces of frames, cornices and loose lengths along the sticks at hand.
 *
 * Every piece takes its length, a trim at both ends, and a kerf to the next; ends of sticks and bad places are left
 * out. First the fewest sticks; among those ways the most meetings cut from wood that lay side by side; among those
 * the least length of sticks. All three exact while the steps of `search` last (`standing` says so); the first two
 * carry a bound where they do not.
 *
 * Refused: sizes that are none (`lengths-…`), a piece longer than every sound stretch (`lengths-piece-too-long`), and
 * more pieces than the sticks hold (`lengths-too-few-sticks`), each with what would help.
 */
export function shareOut(question: LengthsQuestion): Outcome<SharedOut, TroubleCode> {
  const trouble = questionTrouble(question);
  if (trouble !== null) return refused(trouble);
  const job = count(question);
  const tooLong = pieceTooLong(job);
  if (tooLong !== null) return refused(tooLong);
  const search = { ...LENGTHS_SEARCH, ...question.search };
  const sizes = job.pieces.map((piece) => piece.length + job.extra);
  const rooms = job.sticks.map((stick) => stick.rooms);
  const fewest = fewestSticks(sizes, rooms, { left: search.packingSteps });
  if (fewest.kind !== "found") return refused(tooFewSticks(job, sizes, fewest.kind));
  const picked = pickSet(sizes, rooms, job.runs, fewest.chosen, { left: search.neighbourSteps });
  return fine(assembled(job, picked, fewest.atLeast));
}

interface CountedStick {
  readonly name: string;
  readonly index: number;
  readonly length: number;
  readonly badPlaces: readonly BadPlace[];
  /** Largest first, as `rooms.room`. */
  readonly stretches: readonly SoundStretch[];
  readonly rooms: StickRoom;
}

interface CountedJob {
  readonly allowances: LengthsAllowances;
  readonly pieces: readonly CountedPiece[];
  readonly runs: readonly MeetingRun[];
  readonly sticks: readonly CountedStick[];
  readonly kerf: number;
  readonly trim: number;
  /** What a piece takes beside its length: two trims and a kerf. */
  readonly extra: number;
}

function count(question: LengthsQuestion): CountedJob {
  const allowances = allowancesOf(question);
  const kerf = inSteps(allowances.kerfMm);
  const trim = inSteps(allowances.trimMm);
  const runs: MeetingRun[] = [];
  const pieces: CountedPiece[] = [];
  for (const run of question.runs) {
    runs.push({ first: pieces.length, count: run.pieces.length, ends: run.ends });
    for (const [index, piece] of run.pieces.entries()) {
      const number = index + 1;
      const name = piece.name ?? `${run.name} ${number}`;
      pieces.push({ run: run.name, number, name, length: inSteps(piece.lengthMm) });
    }
  }
  const sticks = question.sticks.flatMap((stick, place) => {
    const own = stick.name ?? `Stick ${place + 1}`;
    const copies = stick.count ?? 1;
    return Array.from({ length: copies }, (_, copy) => ({
      stick,
      name: copies > 1 ? `${own} (${copy + 1})` : own,
    }));
  });
  return {
    allowances,
    pieces,
    runs: runs.filter((run) => run.count > 0),
    sticks: sticks.map(({ stick, name }, index) => {
      const badPlaces = stick.badPlaces ?? [];
      const stretches = soundStretches(stick.lengthMm, badPlaces, allowances).sort(
        (a, b) => b.to - b.from - (a.to - a.from) || a.from - b.from,
      );
      const length = inSteps(stick.lengthMm);
      const room = stretches.map(({ from, to }) => to - from + kerf);
      return { name, index, length, badPlaces, stretches, rooms: { room, length } };
    }),
    kerf,
    trim,
    extra: 2 * trim + kerf,
  };
}

function pieceTooLong(job: CountedJob): LengthsTrouble | null {
  const longest = Math.max(0, ...job.sticks.flatMap((stick) => stick.rooms.room)) - job.kerf;
  const piece = job.pieces.find(({ length }) => length + 2 * job.trim > longest);
  if (piece === undefined) return null;
  const needed = piece.length + 2 * job.trim;
  return cataloguedTrouble("lengths-piece-too-long", "runs", {
    name: piece.name,
    neededMm: stepsToMm(needed),
    longestMm: stepsToMm(Math.max(0, longest)),
    buyMm: stepsToMm(needed) + 2 * job.allowances.planingMm,
  });
}

/** Names the pieces that a plain filling leaves over, and the one stick that would take them all. */
function tooFewSticks(
  job: CountedJob,
  sizes: readonly number[],
  kind: "too few" | "not found",
): LengthsTrouble {
  const left = job.sticks.flatMap((stick) => [...stick.rooms.room]);
  const order = sizes.map((_, index) => index).sort((a, b) => at(sizes, b) - at(sizes, a) || a - b);
  const over: number[] = [];
  for (const index of order) {
    const size = at(sizes, index);
    const tightest = tightestFor(size, left);
    if (tightest === null) over.push(index);
    else left[tightest] = at(left, tightest) - size;
  }
  const needed = sum(over.map((index) => at(sizes, index))) - job.kerf;
  return cataloguedTrouble("lengths-too-few-sticks", "sticks", {
    shown: kind === "too few",
    pieces: over.sort((a, b) => a - b).map((index) => at(job.pieces, index).name),
    buyMm: stepsToMm(needed) + 2 * job.allowances.planingMm,
  });
}

function assembled(job: CountedJob, picked: PickedSet, atLeast: number): SharedOut {
  const { chosen } = picked;
  const sticks = chosen.sticks.map((index) => markedStick(job, at(job.sticks, index), chosen.places));
  const used = new Set(chosen.sticks);
  const usedMm = stepsToMm(sum(chosen.sticks.map((index) => at(job.sticks, index).length)));
  const piecesMm = stepsToMm(sum(job.pieces.map((piece) => piece.length)));
  const meetings = job.runs.reduce((total, run) => total + meetingsOf(run), 0);
  return {
    sticks,
    spare: job.sticks.filter((stick) => !used.has(stick.index)).map((stick) => stick.name),
    sticksUsed: {
      count: sticks.length,
      atLeast,
      standing: atLeast === sticks.length ? "proven" : "best found",
    },
    neighbours: {
      meetings,
      together: meetings - picked.apart,
      atMost: meetings - picked.leastApart,
      standing: picked.apart === picked.leastApart ? "proven" : "best found",
    },
    usedMm,
    wastedMm: stepsToMm(inSteps(usedMm) - inSteps(piecesMm)),
    allowances: job.allowances,
    convention: LENGTHS_CONVENTION,
    assumed: [
      cataloguedTrouble("lengths-allowed-for", "", { ...job.allowances }),
      cataloguedTrouble("lengths-one-way-up", "", {}),
    ],
    cautions: cautionsFor(job),
  };
}

function cautionsFor(job: CountedJob): LengthsTrouble[] {
  const shortestMm = stepsToMm(Math.min(...job.pieces.map((piece) => piece.length)));
  const saw = cataloguedTrouble("caution-saw", "", {});
  if (shortestMm >= SHORT_AT_THE_SAW_MM) return [saw];
  const facts = { shortestMm, leastMm: SHORT_AT_THE_SAW_MM };
  return [saw, cataloguedTrouble("caution-short-piece", "", facts)];
}

function markedStick(job: CountedJob, stick: CountedStick, places: readonly StretchPlace[]): MarkedStick {
  const marked = stick.stretches
    .map((stretch, index) => {
      const here = places.flatMap((place, piece) =>
        place.stick === stick.index && place.stretch === index ? [piece] : [],
      );
      const order = inOrder(here, job.runs);
      const steps = { kerf: job.kerf, trim: job.trim, stick: stick.length };
      return { from: stretch.from, ...markStretch(stretch, order, job.pieces, job.runs, steps) };
    })
    .sort((a, b) => a.from - b.from);
  const lengthMm = stepsToMm(stick.length);
  const planingMm = Math.min(job.allowances.planingMm, lengthMm / 2);
  return {
    name: stick.name,
    index: stick.index,
    lengthMm,
    pieces: marked.flatMap((stretch) => stretch.pieces),
    kerfs: marked.flatMap((stretch) => stretch.kerfs),
    ends:
      planingMm > 0
        ? [
            { fromMm: 0, toMm: planingMm },
            { fromMm: lengthMm - planingMm, toMm: lengthMm },
          ]
        : [],
    badPlaces: stick.badPlaces,
    offcuts: marked.flatMap((stretch) => stretch.offcuts),
  };
}
