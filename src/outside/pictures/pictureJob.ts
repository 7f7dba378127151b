import type { CleanReport, Comparison, FlattenWish, FlatView, Result, ShotFacts, ShotMeasures } from '#app/ports.ts';
import type { AssetWant } from '#core/shot.ts';

/** `bytes` are those of the whole file; of a clip, its boxes without the media. */
export interface InspectJob {
  readonly do: 'inspect';
  readonly bytes: Uint8Array;
  readonly hash: string;
  readonly fileBytes: number;
}

export interface CleanJob {
  readonly do: 'clean';
  readonly bytes: Uint8Array;
  readonly want: AssetWant;
  readonly name: string;
}

export interface FlattenJob {
  readonly do: 'flatten';
  readonly bytes: Uint8Array;
  readonly wish: FlattenWish;
}

export interface MeasureJob {
  readonly do: 'measure';
  readonly bytes: Uint8Array;
}

/** `bytes` are those of the first picture. */
export interface CompareJob {
  readonly do: 'compare';
  readonly bytes: Uint8Array;
  readonly second: Uint8Array;
}

export type PictureJob = InspectJob | CleanJob | FlattenJob | MeasureJob | CompareJob;
export type AnswerTo<Job extends PictureJob> = Job extends InspectJob
  ? Result<ShotFacts>
  : Job extends FlattenJob
    ? Result<FlatView>
    : Job extends MeasureJob
      ? Result<ShotMeasures>
      : Job extends CompareJob
        ? Result<Comparison>
        : Result<CleanReport>;

/** A job and its number, as sent to a worker. */
export interface WorkerRequest {
  readonly id: number;
  readonly job: PictureJob;
}

/** What comes back: an answer, or the text of an error that is a mistake of ours. */
export type WorkerReply =
  | { readonly id: number; readonly answer: AnswerTo<PictureJob> }
  | { readonly id: number; readonly broken: string };
