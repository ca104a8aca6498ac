import { accountShown } from '../../engine/index.ts';
import { type AccountAnswer, type AccountParams, accountRequest } from '../requests.ts';
import type { Feature } from './feature.ts';

const nothing: AccountAnswer = { draft: false, judged: 0, of: 0 };

export const feature: Feature = {
  answer: ({ connection, session, pace, answers }) => {
    connection.onRequest(
      accountRequest,
      answers.answering('account', nothing, async ({ uri }: AccountParams): Promise<AccountAnswer> => {
        const analysis = await session.analysisOf(uri);
        if (analysis === undefined) return nothing;
        return pace.timed('account', () => {
          const { draft, judged, of, asks } = accountShown(analysis);
          const question = asks[0]?.question;
          return { draft, judged, of, ...(question === undefined ? {} : { question }) };
        });
      }),
    );
  },
};
