// Written by `npm run generate` from server/vocabulary/words: what the choices of a new site mean.
export const choices = {
  rules: {
    europe: 'EN 12453: minimum level of safeguarding by kind of control and of user',
    'north-america': 'UL 325 and ASTM F2200: usage classes, two means of entrapment protection',
  },
  users: {
    trained: 'only people trained on this gate; no access for anybody else (type 1)',
    limited: 'a limited group, told how it works; the gate borders a public area (type 2)',
    public: 'anybody (type 3)',
  },
  sight: {
    full: 'the whole gate is in view',
    none: 'the gate, or a part of it, is out of view',
  },
  opens: {
    inward: 'into the premises',
    outward: 'towards the road',
  },
} as const;
