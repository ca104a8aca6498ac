import { rulesShown } from '../../engine/index.ts';
import { type RulesAnswer, rulesRequest } from '../requests.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  answer: ({ connection, answers }) => {
    const { answering } = answers;
    connection.onRequest<RulesAnswer, never>(
      rulesRequest,
      answering<unknown, RulesAnswer>('rules', [], () => rulesShown()),
    );
  },
};
