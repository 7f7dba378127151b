import { Worker } from 'node:worker_threads';
import { Failure } from '#core/failure.ts';
import type { AnswerTo, PictureJob, WorkerReply } from './pictureJob.ts';

/** Those who do picture jobs. */
export interface PictureCrew {
  run<Job extends PictureJob>(job: Job): Promise<AnswerTo<Job>>;
  close(): Promise<void>;
}

export interface CrewOptions {
  /** Longest time for one job, in milliseconds. */
  readonly limitMs: number;
}

/** Does the jobs in this thread: where the program runs from its sources and there is no worker file. */
export function openCrewHere(): PictureCrew {
  return {
    async run<Job extends PictureJob>(job: Job) {
      const { runPictureJob } = await import('./runPictureJob.ts');
      return runPictureJob(job);
    },
    async close() {},
  };
}

/**
 * Worker threads that run `file`. A worker that crashes or takes too long is given up with its job, which gets a
 * reason; the next job starts another one. Idle workers do not keep the program from ending.
 */
export function openCrewOfWorkers(file: URL, { limitMs }: CrewOptions): PictureCrew {
  const idle: Hand[] = [];
  const busy = new Set<Hand>();
  let closed = false;
  return {
    async run(job) {
      if (closed) throw cancelled();
      const hand = idle.pop() ?? new Hand(file);
      busy.add(hand);
      const answer = await hand.run(job, limitMs).finally(() => busy.delete(hand));
      if (!hand.gone && !closed) idle.push(hand);
      return answer;
    },
    async close() {
      closed = true;
      await Promise.all([...idle, ...busy].map((hand) => hand.dismiss()));
    },
  };
}

/** One worker, which does one job at a time. */
class Hand {
  gone = false;
  private readonly worker: Worker;
  private jobs = 0;

  constructor(file: URL) {
    this.worker = new Worker(file);
    // Without a listener, a crash between jobs would end the program.
    this.worker.on('error', () => {
      this.gone = true;
    });
    this.worker.on('exit', () => {
      this.gone = true;
    });
    this.worker.unref();
  }

  async run<Job extends PictureJob>(job: Job, limitMs: number): Promise<AnswerTo<Job>> {
    const id = ++this.jobs;
    this.worker.ref();
    try {
      return await new Promise<AnswerTo<Job>>((resolve, reject) => {
        const listeners = {
          message: (reply: WorkerReply) => {
            if (reply.id !== id) return;
            settle();
            if ('broken' in reply) reject(new Error(reply.broken));
            // The worker answers each kind of job with its own kind of answer.
            else resolve(reply.answer as AnswerTo<Job>);
          },
          error: () => giveUp(brokeDown),
          exit: () => (this.dismissed ? fail(cancelled()) : giveUp(brokeDown)),
        };
        const timer = setTimeout(() => giveUp(tooLong), limitMs);
        const settle = () => {
          clearTimeout(timer);
          for (const [event, listener] of Object.entries(listeners)) this.worker.off(event, listener);
        };
        const giveUp = (reason: string) => {
          settle();
          void this.dismiss();
          resolve({ ok: false, reason } as AnswerTo<Job>);
        };
        const fail = (error: Error) => {
          settle();
          reject(error);
        };
        for (const [event, listener] of Object.entries(listeners)) this.worker.on(event, listener);
        this.worker.postMessage({ id, job });
      });
    } finally {
      this.worker.unref();
    }
  }

  private dismissed = false;

  async dismiss(): Promise<void> {
    this.gone = true;
    this.dismissed = true;
    await this.worker.terminate();
  }
}

const brokeDown = 'The decoder broke down over this picture. Open it in a picture program and save it again.';
const tooLong = 'The picture took too long, and was given up. Open it in a picture program and save it again.';

function cancelled(): Failure {
  return new Failure('cancelled', 'The work on pictures was stopped.', 'Start it again.');
}
