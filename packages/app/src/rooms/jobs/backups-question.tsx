import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { lengthWordsOf, stickWords } from "../../common/length-words.ts";
import { Question } from "../../common/question.tsx";
import { SectionThumb } from "../../common/section-thumb.tsx";
import { backupsOf, putBackupBack } from "../../keeping/job-actions.ts";
import type { ReadableJob } from "../../keeping/record.ts";
import type { KeptBackup } from "../../keeping/store.ts";
import { whenWords } from "./when-words.ts";

interface Props {
  readonly kept: ReadableJob;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

export function BackupsQuestion({ kept, isOpen, onClose }: Props) {
  return (
    <Question title={`Backups of “${kept.job.name}”`} isOpen={isOpen} onClose={onClose}>
      {isOpen ? <Backups kept={kept} onClose={onClose} /> : null}
    </Question>
  );
}

function Backups({ kept, onClose }: Omit<Props, "isOpen">) {
  const [backups, setBackups] = useState<readonly KeptBackup[] | null>(null);
  const { jobId } = kept;
  useEffect(() => {
    let isWanted = true;
    void backupsOf(jobId).then((found) => {
      if (isWanted) setBackups(found);
    });
    return () => {
      isWanted = false;
    };
  }, [jobId]);
  return (
    <>
      <p className="quiet">
        While you work, an earlier state is kept about every twenty minutes: three of today, one of each day
        before, ten in all. Putting one back can be undone.
      </p>
      {backups === null ? (
        <p>Looking for them…</p>
      ) : backups.length === 0 ? (
        <p>There is none yet. The first is made when you change this job.</p>
      ) : (
        <ul className="backup-list">
          {backups.map((backup) => (
            <BackupRow key={backup.stoodAtMs} backup={backup} jobId={jobId} onClose={onClose} />
          ))}
        </ul>
      )}
      <div className="tools">
        <Button className="button" onPress={onClose}>
          Leave it as it is
        </Button>
      </div>
    </>
  );
}

interface RowProps {
  readonly backup: KeptBackup;
  readonly jobId: string;
  readonly onClose: () => void;
}

function BackupRow({ backup, jobId, onClose }: RowProps) {
  const when = whenWords(backup.stoodAtMs);
  if (backup.job.kind !== "job") {
    return (
      <li className="backup-row">
        <span>As it was {when}: cannot be read by this version, and stays as it is.</span>
      </li>
    );
  }
  const { job } = backup.job;
  const words = lengthWordsOf(job);
  const putBack = (): void => {
    void putBackupBack(jobId, job).then(onClose);
  };
  return (
    <li className="backup-row">
      <span className="backup-picture">
        <SectionThumb job={job} />
      </span>
      <span className="job-words">
        <strong>As it was {when}</strong>
        <span className="figures quiet">
          {job.name}, {stickWords(words, job.stick)}
        </span>
      </span>
      <Button className="button" onPress={putBack} aria-label={`Put back as it was ${when}`}>
        Put back
      </Button>
    </li>
  );
}
