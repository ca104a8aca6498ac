export { type Account, type Ask, accountOf, isDraft } from './account.ts';
export { type Entry, entryInWords, type Grade, type Lack } from './entries.ts';
