import { parentPort } from 'node:worker_threads';
import type { PictureJob, WorkerReply, WorkerRequest } from './pictures/pictureJob.ts';
import { runPictureJob } from './pictures/runPictureJob.ts';

parentPort?.on('message', async ({ id, job }: WorkerRequest) => {
  const reply = await replyTo(id, job);
  parentPort?.postMessage(reply);
});

async function replyTo(id: number, job: PictureJob): Promise<WorkerReply> {
  try {
    return { id, answer: await runPictureJob(job) };
  } catch (error) {
    return { id, broken: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
