import type { Build } from '#core/build.ts';
import { remember, rememberFor } from '#core/remember.ts';
import topics from './knowledge/guideTopics.json';
import { proseWords } from './writtenGuide.ts';

const searches = [...topics.before, ...topics.after].map(({ topic, words }) => ({
  topic,
  words: words.map((word) => new RegExp(word, 'iu')),
}));

/** Topics of the table that the guide and the pages beside it speak of, a paragraph at a time. */
export const topicsSaid = rememberFor(
  (build: Build): ReadonlySet<string> =>
    new Set(
      proseWords(build)
        .split(/\n{2,}/)
        .flatMap((words) => topicsIn(words)),
    ),
);

const topicsIn = remember((paragraph): readonly string[] =>
  searches.flatMap(({ topic, words }) => (words.some((word) => word.test(paragraph)) ? [topic] : [])),
);
