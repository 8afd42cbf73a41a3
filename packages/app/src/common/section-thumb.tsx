/**
 * A small picture of a job's section in its stick: the end grain tinted, the outline drawn, the stick dashed. Pictures are
 * built one after the other between the screen's own work, so that a long list does not hold it up.
 */
import { type Job, sectionOfJob } from "mouldwright/job";
import { svgPathOfRing } from "mouldwright/section";
import { useEffect, useState } from "react";
import "./section-thumb.css";

interface Thumb {
  /** Path in the stick's own frame, y up; null where the section cannot be built. */
  readonly outline: string | null;
}

const thumbs = new WeakMap<Job, Thumb>();
const waiting = new Map<Job, Set<() => void>>();
let isAtWork = false;

export interface SectionThumbProps {
  readonly job: Job;
  /** Read out; a picture beside its own name needs none. */
  readonly label?: string;
}

export function SectionThumb({ job, label }: SectionThumbProps) {
  const thumb = useThumb(job);
  const { widthMm, thicknessMm } = job.stick;
  const roomMm = Math.max(widthMm, thicknessMm) / 40;
  if (thumb !== undefined && thumb.outline === null) {
    return (
      <span className="section-thumb section-thumb-none">No picture: the parts do not make a section.</span>
    );
  }
  const picture = (
    <svg
      className="section-thumb"
      viewBox={`${-roomMm} ${-roomMm} ${widthMm + 2 * roomMm} ${thicknessMm + 2 * roomMm}`}
      focusable="false"
      aria-hidden="true"
    >
      <g transform={`translate(0 ${thicknessMm}) scale(1 -1)`}>
        <rect className="section-thumb-stick" width={widthMm} height={thicknessMm} />
        {thumb?.outline == null ? null : <path className="section-thumb-wood" d={thumb.outline} />}
      </g>
    </svg>
  );
  return label === undefined ? (
    picture
  ) : (
    <span className="section-thumb" role="img" aria-label={label}>
      {picture}
    </span>
  );
}

function useThumb(job: Job): Thumb | undefined {
  const [, setDrawn] = useState(0);
  useEffect(() => {
    if (thumbs.has(job)) return;
    const onDrawn = (): void => setDrawn((count) => count + 1);
    const others = waiting.get(job) ?? new Set();
    waiting.set(job, others.add(onDrawn));
    drawNext();
    return () => {
      others.delete(onDrawn);
    };
  }, [job]);
  return thumbs.get(job);
}

function drawNext(): void {
  if (isAtWork || waiting.size === 0) return;
  isAtWork = true;
  setTimeout(() => {
    isAtWork = false;
    const [next] = waiting;
    if (next === undefined) return;
    const [job, heard] = next;
    waiting.delete(job);
    // Whoever wanted it may have gone again.
    if (heard.size > 0) {
      thumbs.set(job, thumbOf(job));
      for (const onDrawn of heard) onDrawn();
    }
    drawNext();
  });
}

const DECIMALS = 2;

function thumbOf(job: Job): Thumb {
  const section = sectionOfJob(job);
  return { outline: section.ok ? svgPathOfRing(section.value.outline, DECIMALS) : null };
}
