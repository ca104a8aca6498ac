#include "tree_sitter/parser.h"

#if defined(__GNUC__) || defined(__clang__)
#pragma GCC diagnostic ignored "-Wmissing-field-initializers"
#endif

#define LANGUAGE_VERSION 14
#define STATE_COUNT 46
#define LARGE_STATE_COUNT 7
#define SYMBOL_COUNT 34
#define ALIAS_COUNT 0
#define TOKEN_COUNT 19
#define EXTERNAL_TOKEN_COUNT 0
#define FIELD_COUNT 3
#define MAX_ALIAS_SEQUENCE_LENGTH 5
#define PRODUCTION_ID_COUNT 6

enum ts_symbol_identifiers {
  anon_sym_LBRACE = 1,
  anon_sym_RBRACE = 2,
  anon_sym_COMMA = 3,
  anon_sym_SOH = 4,
  sym_figure = 5,
  sym_tolerance = 6,
  sym_range = 7,
  sym_date = 8,
  anon_sym_COLON = 9,
  anon_sym_DQUOTE = 10,
  anon_sym_DQUOTE2 = 11,
  sym__content = 12,
  sym_escape = 13,
  aux_sym_word_token1 = 14,
  aux_sym_word_token2 = 15,
  aux_sym_word_token3 = 16,
  sym_comment = 17,
  aux_sym__ends_token1 = 18,
  sym_file = 19,
  sym__item = 20,
  sym_block = 21,
  sym_body = 22,
  sym_line = 23,
  sym__value = 24,
  sym__misplaced = 25,
  sym_number = 26,
  sym_model = 27,
  sym_text = 28,
  sym_word = 29,
  aux_sym__ends = 30,
  aux_sym_file_repeat1 = 31,
  aux_sym_line_repeat1 = 32,
  aux_sym_text_repeat1 = 33,
};

static const char * const ts_symbol_names[] = {
  [ts_builtin_sym_end] = "end",
  [anon_sym_LBRACE] = "{",
  [anon_sym_RBRACE] = "}",
  [anon_sym_COMMA] = ",",
  [anon_sym_SOH] = "\x01",
  [sym_figure] = "figure",
  [sym_tolerance] = "tolerance",
  [sym_range] = "range",
  [sym_date] = "date",
  [anon_sym_COLON] = ":",
  [anon_sym_DQUOTE] = "\"",
  [anon_sym_DQUOTE2] = "\"",
  [sym__content] = "_content",
  [sym_escape] = "escape",
  [aux_sym_word_token1] = "word_token1",
  [aux_sym_word_token2] = "word_token2",
  [aux_sym_word_token3] = "word_token3",
  [sym_comment] = "comment",
  [aux_sym__ends_token1] = "_ends_token1",
  [sym_file] = "file",
  [sym__item] = "_item",
  [sym_block] = "block",
  [sym_body] = "body",
  [sym_line] = "line",
  [sym__value] = "_value",
  [sym__misplaced] = "_misplaced",
  [sym_number] = "number",
  [sym_model] = "model",
  [sym_text] = "text",
  [sym_word] = "word",
  [aux_sym__ends] = "_ends",
  [aux_sym_file_repeat1] = "file_repeat1",
  [aux_sym_line_repeat1] = "line_repeat1",
  [aux_sym_text_repeat1] = "text_repeat1",
};

static const TSSymbol ts_symbol_map[] = {
  [ts_builtin_sym_end] = ts_builtin_sym_end,
  [anon_sym_LBRACE] = anon_sym_LBRACE,
  [anon_sym_RBRACE] = anon_sym_RBRACE,
  [anon_sym_COMMA] = anon_sym_COMMA,
  [anon_sym_SOH] = anon_sym_SOH,
  [sym_figure] = sym_figure,
  [sym_tolerance] = sym_tolerance,
  [sym_range] = sym_range,
  [sym_date] = sym_date,
  [anon_sym_COLON] = anon_sym_COLON,
  [anon_sym_DQUOTE] = anon_sym_DQUOTE,
  [anon_sym_DQUOTE2] = anon_sym_DQUOTE,
  [sym__content] = sym__content,
  [sym_escape] = sym_escape,
  [aux_sym_word_token1] = aux_sym_word_token1,
  [aux_sym_word_token2] = aux_sym_word_token2,
  [aux_sym_word_token3] = aux_sym_word_token3,
  [sym_comment] = sym_comment,
  [aux_sym__ends_token1] = aux_sym__ends_token1,
  [sym_file] = sym_file,
  [sym__item] = sym__item,
  [sym_block] = sym_block,
  [sym_body] = sym_body,
  [sym_line] = sym_line,
  [sym__value] = sym__value,
  [sym__misplaced] = sym__misplaced,
  [sym_number] = sym_number,
  [sym_model] = sym_model,
  [sym_text] = sym_text,
  [sym_word] = sym_word,
  [aux_sym__ends] = aux_sym__ends,
  [aux_sym_file_repeat1] = aux_sym_file_repeat1,
  [aux_sym_line_repeat1] = aux_sym_line_repeat1,
  [aux_sym_text_repeat1] = aux_sym_text_repeat1,
};

static const TSSymbolMetadata ts_symbol_metadata[] = {
  [ts_builtin_sym_end] = {
    .visible = false,
    .named = true,
  },
  [anon_sym_LBRACE] = {
    .visible = true,
    .named = false,
  },
  [anon_sym_RBRACE] = {
    .visible = true,
    .named = false,
  },
  [anon_sym_COMMA] = {
    .visible = true,
    .named = false,
  },
  [anon_sym_SOH] = {
    .visible = true,
    .named = false,
  },
  [sym_figure] = {
    .visible = true,
    .named = true,
  },
  [sym_tolerance] = {
    .visible = true,
    .named = true,
  },
  [sym_range] = {
    .visible = true,
    .named = true,
  },
  [sym_date] = {
    .visible = true,
    .named = true,
  },
  [anon_sym_COLON] = {
    .visible = true,
    .named = false,
  },
  [anon_sym_DQUOTE] = {
    .visible = true,
    .named = false,
  },
  [anon_sym_DQUOTE2] = {
    .visible = true,
    .named = false,
  },
  [sym__content] = {
    .visible = false,
    .named = true,
  },
  [sym_escape] = {
    .visible = true,
    .named = true,
  },
  [aux_sym_word_token1] = {
    .visible = false,
    .named = false,
  },
  [aux_sym_word_token2] = {
    .visible = false,
    .named = false,
  },
  [aux_sym_word_token3] = {
    .visible = false,
    .named = false,
  },
  [sym_comment] = {
    .visible = true,
    .named = true,
  },
  [aux_sym__ends_token1] = {
    .visible = false,
    .named = false,
  },
  [sym_file] = {
    .visible = true,
    .named = true,
  },
  [sym__item] = {
    .visible = false,
    .named = true,
  },
  [sym_block] = {
    .visible = true,
    .named = true,
  },
  [sym_body] = {
    .visible = true,
    .named = true,
  },
  [sym_line] = {
    .visible = true,
    .named = true,
  },
  [sym__value] = {
    .visible = false,
    .named = true,
  },
  [sym__misplaced] = {
    .visible = false,
    .named = true,
  },
  [sym_number] = {
    .visible = true,
    .named = true,
  },
  [sym_model] = {
    .visible = true,
    .named = true,
  },
  [sym_text] = {
    .visible = true,
    .named = true,
  },
  [sym_word] = {
    .visible = true,
    .named = true,
  },
  [aux_sym__ends] = {
    .visible = false,
    .named = false,
  },
  [aux_sym_file_repeat1] = {
    .visible = false,
    .named = false,
  },
  [aux_sym_line_repeat1] = {
    .visible = false,
    .named = false,
  },
  [aux_sym_text_repeat1] = {
    .visible = false,
    .named = false,
  },
};

enum ts_field_identifiers {
  field_name = 1,
  field_unit = 2,
  field_word = 3,
};

static const char * const ts_field_names[] = {
  [0] = NULL,
  [field_name] = "name",
  [field_unit] = "unit",
  [field_word] = "word",
};

static const TSFieldMapSlice ts_field_map_slices[PRODUCTION_ID_COUNT] = {
  [1] = {.index = 0, .length = 1},
  [2] = {.index = 1, .length = 1},
  [3] = {.index = 2, .length = 1},
  [4] = {.index = 3, .length = 1},
  [5] = {.index = 4, .length = 2},
};

static const TSFieldMapEntry ts_field_map_entries[] = {
  [0] =
    {field_word, 0},
  [1] =
    {field_unit, 1},
  [2] =
    {field_name, 1},
  [3] =
    {field_unit, 3},
  [4] =
    {field_unit, 1},
    {field_unit, 4},
};

static const TSSymbol ts_alias_sequences[PRODUCTION_ID_COUNT][MAX_ALIAS_SEQUENCE_LENGTH] = {
  [0] = {0},
};

static const uint16_t ts_non_terminal_alias_map[] = {
  0,
};

static const TSStateId ts_primary_state_ids[STATE_COUNT] = {
  [0] = 0,
  [1] = 1,
  [2] = 2,
  [3] = 3,
  [4] = 4,
  [5] = 5,
  [6] = 6,
  [7] = 7,
  [8] = 8,
  [9] = 9,
  [10] = 10,
  [11] = 11,
  [12] = 12,
  [13] = 13,
  [14] = 14,
  [15] = 15,
  [16] = 16,
  [17] = 17,
  [18] = 18,
  [19] = 19,
  [20] = 20,
  [21] = 21,
  [22] = 22,
  [23] = 23,
  [24] = 24,
  [25] = 25,
  [26] = 26,
  [27] = 27,
  [28] = 28,
  [29] = 29,
  [30] = 30,
  [31] = 31,
  [32] = 32,
  [33] = 33,
  [34] = 34,
  [35] = 35,
  [36] = 36,
  [37] = 37,
  [38] = 38,
  [39] = 39,
  [40] = 40,
  [41] = 41,
  [42] = 42,
  [43] = 43,
  [44] = 44,
  [45] = 45,
};

static TSCharacterRange extras_character_set_1[] = {
  {'\t', '\t'}, {0x0b, '\f'}, {' ', ' '}, {0xa0, 0xa0}, {0x1680, 0x1680}, {0x2000, 0x200a}, {0x202f, 0x202f}, {0x205f, 0x205f},
  {0x3000, 0x3000},
};

static TSCharacterRange aux_sym_word_token1_character_set_1[] = {
  {'!', '!'}, {'$', '+'}, {'-', '/'}, {';', 'z'}, {'|', '|'}, {'~', '~'}, {0xa1, 0xac}, {0xae, 0xb0},
  {0xb2, 0x34e}, {0x350, 0x61b}, {0x61d, 0x115e}, {0x1161, 0x167f}, {0x1681, 0x17b3}, {0x17b6, 0x180a}, {0x1810, 0x1fff}, {0x2010, 0x2027},
  {0x2030, 0x205e}, {0x2070, 0x27ff}, {0x2801, 0x2fff}, {0x3001, 0x3163}, {0x3165, 0xfdff}, {0xfe10, 0xfefe}, {0xff00, 0xff9f}, {0xffa1, 0xffef},
  {0xfffc, 0xfffd}, {0x10000, 0x1342f}, {0x13440, 0x1bc9f}, {0x1bca4, 0x1d158}, {0x1d15a, 0x1d172}, {0x1d17b, 0xdffff}, {0xe1000, 0x10ffff},
};

static TSCharacterRange aux_sym_word_token1_character_set_2[] = {
  {'!', '!'}, {'$', '+'}, {'.', '/'}, {';', 'z'}, {'|', '|'}, {'~', '~'}, {0xa1, 0xac}, {0xae, 0xb0},
  {0xb2, 0x34e}, {0x350, 0x61b}, {0x61d, 0x115e}, {0x1161, 0x167f}, {0x1681, 0x17b3}, {0x17b6, 0x180a}, {0x1810, 0x1fff}, {0x2010, 0x2027},
  {0x2030, 0x205e}, {0x2070, 0x27ff}, {0x2801, 0x2fff}, {0x3001, 0x3163}, {0x3165, 0xfdff}, {0xfe10, 0xfefe}, {0xff00, 0xff9f}, {0xffa1, 0xffef},
  {0xfffc, 0xfffd}, {0x10000, 0x1342f}, {0x13440, 0x1bc9f}, {0x1bca4, 0x1d158}, {0x1d15a, 0x1d172}, {0x1d17b, 0xdffff}, {0xe1000, 0x10ffff},
};

static TSCharacterRange aux_sym_word_token1_character_set_3[] = {
  {'!', '!'}, {'$', '+'}, {'-', '-'}, {'/', '9'}, {';', 'z'}, {'|', '|'}, {'~', '~'}, {0xa1, 0xac},
  {0xae, 0xb0}, {0xb2, 0x34e}, {0x350, 0x61b}, {0x61d, 0x115e}, {0x1161, 0x167f}, {0x1681, 0x17b3}, {0x17b6, 0x180a}, {0x1810, 0x1fff},
  {0x2010, 0x2027}, {0x2030, 0x205e}, {0x2070, 0x27ff}, {0x2801, 0x2fff}, {0x3001, 0x3163}, {0x3165, 0xfdff}, {0xfe10, 0xfefe}, {0xff00, 0xff9f},
  {0xffa1, 0xffef}, {0xfffc, 0xfffd}, {0x10000, 0x1342f}, {0x13440, 0x1bc9f}, {0x1bca4, 0x1d158}, {0x1d15a, 0x1d172}, {0x1d17b, 0xdffff}, {0xe1000, 0x10ffff},
};

static TSCharacterRange aux_sym_word_token1_character_set_4[] = {
  {'!', '!'}, {'$', '+'}, {'-', '9'}, {';', 'z'}, {'|', '|'}, {'~', '~'}, {0xa1, 0xac}, {0xae, 0xb0},
  {0xb2, 0x34e}, {0x350, 0x61b}, {0x61d, 0x115e}, {0x1161, 0x167f}, {0x1681, 0x17b3}, {0x17b6, 0x180a}, {0x1810, 0x1fff}, {0x2010, 0x2027},
  {0x2030, 0x205e}, {0x2070, 0x27ff}, {0x2801, 0x2fff}, {0x3001, 0x3163}, {0x3165, 0xfdff}, {0xfe10, 0xfefe}, {0xff00, 0xff9f}, {0xffa1, 0xffef},
  {0xfffc, 0xfffd}, {0x10000, 0x1342f}, {0x13440, 0x1bc9f}, {0x1bca4, 0x1d158}, {0x1d15a, 0x1d172}, {0x1d17b, 0xdffff}, {0xe1000, 0x10ffff},
};

static TSCharacterRange aux_sym_word_token1_character_set_5[] = {
  {'!', '!'}, {'$', '+'}, {'.', '9'}, {';', 'z'}, {'|', '|'}, {'~', '~'}, {0xa1, 0xac}, {0xae, 0xb0},
  {0xb2, 0x34e}, {0x350, 0x61b}, {0x61d, 0x115e}, {0x1161, 0x167f}, {0x1681, 0x17b3}, {0x17b6, 0x180a}, {0x1810, 0x1fff}, {0x2010, 0x2027},
  {0x2030, 0x205e}, {0x2070, 0x27ff}, {0x2801, 0x2fff}, {0x3001, 0x3163}, {0x3165, 0xfdff}, {0xfe10, 0xfefe}, {0xff00, 0xff9f}, {0xffa1, 0xffef},
  {0xfffc, 0xfffd}, {0x10000, 0x1342f}, {0x13440, 0x1bc9f}, {0x1bca4, 0x1d158}, {0x1d15a, 0x1d172}, {0x1d17b, 0xdffff}, {0xe1000, 0x10ffff},
};

static bool ts_lex(TSLexer *lexer, TSStateId state) {
  START_LEXER();
  eof = lexer->eof(lexer);
  switch (state) {
    case 0:
      if (eof) ADVANCE(18);
      ADVANCE_MAP(
        0x01, 22,
        '"', 35,
        '#', 52,
        '+', 42,
        ',', 21,
        '.', 44,
        ':', 33,
        '{', 19,
        '}', 20,
        0xb1, 29,
        '\n', 53,
        '\r', 53,
        '-', 39,
        0x2212, 39,
      );
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(26);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(14);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 1:
      if (lookahead == '"') ADVANCE(35);
      if (lookahead == '#') ADVANCE(37);
      if (lookahead == '\\') ADVANCE(13);
      if (set_contains(extras_character_set_1, 9, lookahead)) ADVANCE(36);
      if (lookahead != 0 &&
          (lookahead < '\t' || '\r' < lookahead)) ADVANCE(37);
      END_STATE();
    case 2:
      if (lookahead == '#') ADVANCE(52);
      if (lookahead == '+') ADVANCE(49);
      if (lookahead == '.') ADVANCE(51);
      if (lookahead == '-' ||
          lookahead == 0x2212) ADVANCE(40);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(2);
      if (set_contains(aux_sym_word_token1_character_set_2, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 3:
      if (lookahead == '#') ADVANCE(52);
      if (lookahead == '+' ||
          lookahead == '-' ||
          lookahead == 0x2212) ADVANCE(12);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(3);
      END_STATE();
    case 4:
      if (lookahead == '+') ADVANCE(4);
      if (lookahead == '.') ADVANCE(5);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 5:
      if (lookahead == '+') ADVANCE(4);
      if (set_contains(aux_sym_word_token1_character_set_3, 32, lookahead)) ADVANCE(41);
      END_STATE();
    case 6:
      if (lookahead == '-') ADVANCE(11);
      END_STATE();
    case 7:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(28);
      END_STATE();
    case 8:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(6);
      END_STATE();
    case 9:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(32);
      END_STATE();
    case 10:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(8);
      END_STATE();
    case 11:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(9);
      END_STATE();
    case 12:
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      END_STATE();
    case 13:
      if (lookahead != 0 &&
          lookahead != '\n' &&
          lookahead != '\r') ADVANCE(38);
      END_STATE();
    case 14:
      if (eof) ADVANCE(18);
      ADVANCE_MAP(
        0x01, 22,
        '"', 34,
        '#', 52,
        '+', 46,
        ',', 21,
        '.', 48,
        ':', 33,
        '{', 19,
        '}', 20,
        0xb1, 29,
        '\n', 53,
        '\r', 53,
        '-', 39,
        0x2212, 39,
      );
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(26);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(14);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 15:
      if (eof) ADVANCE(18);
      ADVANCE_MAP(
        '"', 34,
        '#', 52,
        '+', 42,
        ',', 21,
        '.', 44,
        ':', 33,
        '{', 19,
        '}', 20,
        0xb1, 29,
        '\n', 53,
        '\r', 53,
        '-', 39,
        0x2212, 39,
      );
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(26);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(16);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 16:
      if (eof) ADVANCE(18);
      ADVANCE_MAP(
        '"', 34,
        '#', 52,
        '+', 46,
        ',', 21,
        '.', 48,
        ':', 33,
        '{', 19,
        '}', 20,
        0xb1, 29,
        '\n', 53,
        '\r', 53,
        '-', 39,
        0x2212, 39,
      );
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(26);
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(16);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 17:
      if (eof) ADVANCE(18);
      ADVANCE_MAP(
        '#', 52,
        '+', 47,
        '.', 48,
        '{', 19,
        '}', 20,
        0xb1, 29,
        '\n', 53,
        '\r', 53,
        '-', 40,
        0x2212, 40,
      );
      if (set_contains(extras_character_set_1, 9, lookahead)) SKIP(17);
      if (set_contains(aux_sym_word_token1_character_set_2, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 18:
      ACCEPT_TOKEN(ts_builtin_sym_end);
      END_STATE();
    case 19:
      ACCEPT_TOKEN(anon_sym_LBRACE);
      END_STATE();
    case 20:
      ACCEPT_TOKEN(anon_sym_RBRACE);
      END_STATE();
    case 21:
      ACCEPT_TOKEN(anon_sym_COMMA);
      END_STATE();
    case 22:
      ACCEPT_TOKEN(anon_sym_SOH);
      END_STATE();
    case 23:
      ACCEPT_TOKEN(sym_figure);
      if (lookahead == '-') ADVANCE(10);
      if (lookahead == '.') ADVANCE(7);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      END_STATE();
    case 24:
      ACCEPT_TOKEN(sym_figure);
      if (lookahead == '.') ADVANCE(7);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(23);
      END_STATE();
    case 25:
      ACCEPT_TOKEN(sym_figure);
      if (lookahead == '.') ADVANCE(7);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(24);
      END_STATE();
    case 26:
      ACCEPT_TOKEN(sym_figure);
      if (lookahead == '.') ADVANCE(7);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(25);
      END_STATE();
    case 27:
      ACCEPT_TOKEN(sym_figure);
      if (lookahead == '.') ADVANCE(7);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      END_STATE();
    case 28:
      ACCEPT_TOKEN(sym_figure);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(28);
      END_STATE();
    case 29:
      ACCEPT_TOKEN(sym_tolerance);
      END_STATE();
    case 30:
      ACCEPT_TOKEN(sym_range);
      END_STATE();
    case 31:
      ACCEPT_TOKEN(sym_range);
      if (lookahead == '.') ADVANCE(30);
      END_STATE();
    case 32:
      ACCEPT_TOKEN(sym_date);
      END_STATE();
    case 33:
      ACCEPT_TOKEN(anon_sym_COLON);
      END_STATE();
    case 34:
      ACCEPT_TOKEN(anon_sym_DQUOTE);
      END_STATE();
    case 35:
      ACCEPT_TOKEN(anon_sym_DQUOTE2);
      END_STATE();
    case 36:
      ACCEPT_TOKEN(sym__content);
      if (lookahead == '#') ADVANCE(37);
      if (set_contains(extras_character_set_1, 9, lookahead)) ADVANCE(36);
      if (lookahead != 0 &&
          (lookahead < '\t' || '\r' < lookahead) &&
          lookahead != '"' &&
          lookahead != '#' &&
          lookahead != '\\') ADVANCE(37);
      END_STATE();
    case 37:
      ACCEPT_TOKEN(sym__content);
      if (lookahead != 0 &&
          lookahead != '\n' &&
          lookahead != '\r' &&
          lookahead != '"' &&
          lookahead != '\\') ADVANCE(37);
      END_STATE();
    case 38:
      ACCEPT_TOKEN(sym_escape);
      END_STATE();
    case 39:
      ACCEPT_TOKEN(aux_sym_word_token1);
      if (lookahead == '+') ADVANCE(4);
      if (lookahead == '.') ADVANCE(5);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      if (set_contains(aux_sym_word_token1_character_set_4, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 40:
      ACCEPT_TOKEN(aux_sym_word_token1);
      if (lookahead == '+') ADVANCE(4);
      if (lookahead == '.') ADVANCE(5);
      if (set_contains(aux_sym_word_token1_character_set_1, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 41:
      ACCEPT_TOKEN(aux_sym_word_token1);
      if (lookahead == '+') ADVANCE(4);
      if (lookahead == '.') ADVANCE(5);
      if (set_contains(aux_sym_word_token1_character_set_4, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 42:
      ACCEPT_TOKEN(aux_sym_word_token2);
      if (lookahead == '+') ADVANCE(43);
      if (lookahead == '-') ADVANCE(29);
      if (lookahead == '.') ADVANCE(45);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 43:
      ACCEPT_TOKEN(aux_sym_word_token2);
      if (lookahead == '+') ADVANCE(43);
      if (lookahead == '.') ADVANCE(45);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 44:
      ACCEPT_TOKEN(aux_sym_word_token2);
      if (lookahead == '+') ADVANCE(43);
      if (lookahead == '.') ADVANCE(31);
      if (set_contains(aux_sym_word_token1_character_set_4, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 45:
      ACCEPT_TOKEN(aux_sym_word_token2);
      if (lookahead == '+') ADVANCE(43);
      if (set_contains(aux_sym_word_token1_character_set_3, 32, lookahead)) ADVANCE(41);
      END_STATE();
    case 46:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (lookahead == '-') ADVANCE(29);
      if (lookahead == '.') ADVANCE(51);
      if (('0' <= lookahead && lookahead <= '9')) ADVANCE(27);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 47:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (lookahead == '-') ADVANCE(29);
      if (lookahead == '.') ADVANCE(51);
      if (set_contains(aux_sym_word_token1_character_set_2, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 48:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (lookahead == '.') ADVANCE(31);
      if (set_contains(aux_sym_word_token1_character_set_4, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 49:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (lookahead == '.') ADVANCE(51);
      if (set_contains(aux_sym_word_token1_character_set_2, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 50:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (lookahead == '.') ADVANCE(51);
      if (set_contains(aux_sym_word_token1_character_set_5, 31, lookahead)) ADVANCE(41);
      END_STATE();
    case 51:
      ACCEPT_TOKEN(aux_sym_word_token3);
      if (lookahead == '+') ADVANCE(50);
      if (set_contains(aux_sym_word_token1_character_set_3, 32, lookahead)) ADVANCE(41);
      END_STATE();
    case 52:
      ACCEPT_TOKEN(sym_comment);
      if (lookahead != 0 &&
          lookahead != '\n' &&
          lookahead != '\r') ADVANCE(52);
      END_STATE();
    case 53:
      ACCEPT_TOKEN(aux_sym__ends_token1);
      END_STATE();
    default:
      return false;
  }
}

static const TSLexMode ts_lex_modes[STATE_COUNT] = {
  [0] = {.lex_state = 0},
  [1] = {.lex_state = 17},
  [2] = {.lex_state = 16},
  [3] = {.lex_state = 16},
  [4] = {.lex_state = 16},
  [5] = {.lex_state = 16},
  [6] = {.lex_state = 16},
  [7] = {.lex_state = 15},
  [8] = {.lex_state = 16},
  [9] = {.lex_state = 16},
  [10] = {.lex_state = 16},
  [11] = {.lex_state = 17},
  [12] = {.lex_state = 16},
  [13] = {.lex_state = 17},
  [14] = {.lex_state = 16},
  [15] = {.lex_state = 16},
  [16] = {.lex_state = 16},
  [17] = {.lex_state = 17},
  [18] = {.lex_state = 16},
  [19] = {.lex_state = 16},
  [20] = {.lex_state = 16},
  [21] = {.lex_state = 16},
  [22] = {.lex_state = 16},
  [23] = {.lex_state = 17},
  [24] = {.lex_state = 17},
  [25] = {.lex_state = 17},
  [26] = {.lex_state = 17},
  [27] = {.lex_state = 17},
  [28] = {.lex_state = 17},
  [29] = {.lex_state = 17},
  [30] = {.lex_state = 17},
  [31] = {.lex_state = 17},
  [32] = {.lex_state = 17},
  [33] = {.lex_state = 17},
  [34] = {.lex_state = 17},
  [35] = {.lex_state = 17},
  [36] = {.lex_state = 17},
  [37] = {.lex_state = 17},
  [38] = {.lex_state = 1},
  [39] = {.lex_state = 1},
  [40] = {.lex_state = 1},
  [41] = {.lex_state = 2},
  [42] = {.lex_state = 3},
  [43] = {.lex_state = 0},
  [44] = {.lex_state = 0},
  [45] = {.lex_state = 3},
};

static const uint16_t ts_parse_table[LARGE_STATE_COUNT][SYMBOL_COUNT] = {
  [0] = {
    [ts_builtin_sym_end] = ACTIONS(1),
    [anon_sym_LBRACE] = ACTIONS(1),
    [anon_sym_RBRACE] = ACTIONS(1),
    [anon_sym_COMMA] = ACTIONS(1),
    [anon_sym_SOH] = ACTIONS(1),
    [sym_figure] = ACTIONS(1),
    [sym_tolerance] = ACTIONS(1),
    [sym_range] = ACTIONS(1),
    [sym_date] = ACTIONS(1),
    [anon_sym_COLON] = ACTIONS(1),
    [anon_sym_DQUOTE] = ACTIONS(1),
    [anon_sym_DQUOTE2] = ACTIONS(1),
    [aux_sym_word_token1] = ACTIONS(1),
    [aux_sym_word_token2] = ACTIONS(1),
    [aux_sym_word_token3] = ACTIONS(1),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(1),
  },
  [1] = {
    [sym_file] = STATE(44),
    [sym__item] = STATE(27),
    [sym_block] = STATE(31),
    [sym_line] = STATE(29),
    [sym__misplaced] = STATE(4),
    [sym_word] = STATE(5),
    [aux_sym__ends] = STATE(11),
    [aux_sym_file_repeat1] = STATE(27),
    [ts_builtin_sym_end] = ACTIONS(5),
    [sym_tolerance] = ACTIONS(7),
    [sym_range] = ACTIONS(7),
    [aux_sym_word_token1] = ACTIONS(9),
    [aux_sym_word_token3] = ACTIONS(11),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(13),
  },
  [2] = {
    [sym__value] = STATE(2),
    [sym__misplaced] = STATE(2),
    [sym_number] = STATE(2),
    [sym_model] = STATE(2),
    [sym_text] = STATE(2),
    [sym_word] = STATE(2),
    [aux_sym_line_repeat1] = STATE(2),
    [ts_builtin_sym_end] = ACTIONS(15),
    [anon_sym_LBRACE] = ACTIONS(15),
    [anon_sym_RBRACE] = ACTIONS(15),
    [anon_sym_COMMA] = ACTIONS(17),
    [sym_figure] = ACTIONS(20),
    [sym_tolerance] = ACTIONS(23),
    [sym_range] = ACTIONS(23),
    [sym_date] = ACTIONS(17),
    [anon_sym_COLON] = ACTIONS(26),
    [anon_sym_DQUOTE] = ACTIONS(29),
    [aux_sym_word_token1] = ACTIONS(32),
    [aux_sym_word_token3] = ACTIONS(35),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(15),
  },
  [3] = {
    [sym__value] = STATE(2),
    [sym__misplaced] = STATE(2),
    [sym_number] = STATE(2),
    [sym_model] = STATE(2),
    [sym_text] = STATE(2),
    [sym_word] = STATE(2),
    [aux_sym_line_repeat1] = STATE(2),
    [ts_builtin_sym_end] = ACTIONS(38),
    [anon_sym_LBRACE] = ACTIONS(38),
    [anon_sym_RBRACE] = ACTIONS(38),
    [anon_sym_COMMA] = ACTIONS(40),
    [sym_figure] = ACTIONS(42),
    [sym_tolerance] = ACTIONS(7),
    [sym_range] = ACTIONS(7),
    [sym_date] = ACTIONS(40),
    [anon_sym_COLON] = ACTIONS(44),
    [anon_sym_DQUOTE] = ACTIONS(46),
    [aux_sym_word_token1] = ACTIONS(48),
    [aux_sym_word_token3] = ACTIONS(11),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(38),
  },
  [4] = {
    [sym__value] = STATE(6),
    [sym__misplaced] = STATE(6),
    [sym_number] = STATE(6),
    [sym_model] = STATE(6),
    [sym_text] = STATE(6),
    [sym_word] = STATE(6),
    [aux_sym_line_repeat1] = STATE(6),
    [ts_builtin_sym_end] = ACTIONS(50),
    [anon_sym_LBRACE] = ACTIONS(50),
    [anon_sym_RBRACE] = ACTIONS(50),
    [anon_sym_COMMA] = ACTIONS(52),
    [sym_figure] = ACTIONS(42),
    [sym_tolerance] = ACTIONS(7),
    [sym_range] = ACTIONS(7),
    [sym_date] = ACTIONS(52),
    [anon_sym_COLON] = ACTIONS(44),
    [anon_sym_DQUOTE] = ACTIONS(46),
    [aux_sym_word_token1] = ACTIONS(48),
    [aux_sym_word_token3] = ACTIONS(11),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(50),
  },
  [5] = {
    [sym__value] = STATE(3),
    [sym__misplaced] = STATE(3),
    [sym_number] = STATE(3),
    [sym_model] = STATE(3),
    [sym_text] = STATE(3),
    [sym_word] = STATE(3),
    [aux_sym_line_repeat1] = STATE(3),
    [ts_builtin_sym_end] = ACTIONS(54),
    [anon_sym_LBRACE] = ACTIONS(54),
    [anon_sym_RBRACE] = ACTIONS(54),
    [anon_sym_COMMA] = ACTIONS(56),
    [sym_figure] = ACTIONS(42),
    [sym_tolerance] = ACTIONS(7),
    [sym_range] = ACTIONS(7),
    [sym_date] = ACTIONS(56),
    [anon_sym_COLON] = ACTIONS(44),
    [anon_sym_DQUOTE] = ACTIONS(46),
    [aux_sym_word_token1] = ACTIONS(48),
    [aux_sym_word_token3] = ACTIONS(11),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(54),
  },
  [6] = {
    [sym__value] = STATE(2),
    [sym__misplaced] = STATE(2),
    [sym_number] = STATE(2),
    [sym_model] = STATE(2),
    [sym_text] = STATE(2),
    [sym_word] = STATE(2),
    [aux_sym_line_repeat1] = STATE(2),
    [ts_builtin_sym_end] = ACTIONS(58),
    [anon_sym_LBRACE] = ACTIONS(58),
    [anon_sym_RBRACE] = ACTIONS(58),
    [anon_sym_COMMA] = ACTIONS(40),
    [sym_figure] = ACTIONS(42),
    [sym_tolerance] = ACTIONS(7),
    [sym_range] = ACTIONS(7),
    [sym_date] = ACTIONS(40),
    [anon_sym_COLON] = ACTIONS(44),
    [anon_sym_DQUOTE] = ACTIONS(46),
    [aux_sym_word_token1] = ACTIONS(48),
    [aux_sym_word_token3] = ACTIONS(11),
    [sym_comment] = ACTIONS(3),
    [aux_sym__ends_token1] = ACTIONS(58),
  },
};

static const uint16_t ts_small_parse_table[] = {
  [0] = 4,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(64), 1,
      aux_sym_word_token2,
    ACTIONS(62), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(60), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [24] = 6,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(48), 1,
      aux_sym_word_token1,
    ACTIONS(68), 1,
      sym_figure,
    STATE(22), 1,
      sym_word,
    ACTIONS(66), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [52] = 7,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(48), 1,
      aux_sym_word_token1,
    ACTIONS(72), 1,
      sym_figure,
    STATE(16), 1,
      sym_word,
    ACTIONS(74), 2,
      sym_tolerance,
      sym_range,
    ACTIONS(70), 8,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [82] = 6,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(48), 1,
      aux_sym_word_token1,
    ACTIONS(78), 1,
      sym_figure,
    STATE(19), 1,
      sym_word,
    ACTIONS(76), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [110] = 12,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(80), 1,
      ts_builtin_sym_end,
    ACTIONS(82), 1,
      aux_sym__ends_token1,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(30), 1,
      aux_sym__ends,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(24), 2,
      sym__item,
      aux_sym_file_repeat1,
  [149] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(86), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(84), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [170] = 12,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(88), 1,
      anon_sym_RBRACE,
    ACTIONS(90), 1,
      aux_sym__ends_token1,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(17), 1,
      aux_sym__ends,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(25), 2,
      sym__item,
      aux_sym_file_repeat1,
  [209] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(94), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(92), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [230] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(62), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(60), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [251] = 4,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(100), 2,
      sym_tolerance,
      sym_range,
    ACTIONS(98), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(96), 8,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [274] = 12,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(82), 1,
      aux_sym__ends_token1,
    ACTIONS(102), 1,
      anon_sym_RBRACE,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(30), 1,
      aux_sym__ends,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(26), 2,
      sym__item,
      aux_sym_file_repeat1,
  [313] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(106), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(104), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [334] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(110), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(108), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [355] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(114), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(112), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [376] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(118), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(116), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [397] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(122), 3,
      sym_figure,
      aux_sym_word_token1,
      aux_sym_word_token3,
    ACTIONS(120), 10,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      anon_sym_COMMA,
      sym_tolerance,
      sym_range,
      sym_date,
      anon_sym_COLON,
      anon_sym_DQUOTE,
      aux_sym__ends_token1,
  [418] = 10,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(129), 1,
      aux_sym_word_token1,
    ACTIONS(132), 1,
      aux_sym_word_token3,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(124), 2,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
    ACTIONS(126), 2,
      sym_tolerance,
      sym_range,
    STATE(23), 2,
      sym__item,
      aux_sym_file_repeat1,
  [452] = 10,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(135), 1,
      ts_builtin_sym_end,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(23), 2,
      sym__item,
      aux_sym_file_repeat1,
  [485] = 10,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(102), 1,
      anon_sym_RBRACE,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(23), 2,
      sym__item,
      aux_sym_file_repeat1,
  [518] = 10,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(137), 1,
      anon_sym_RBRACE,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(23), 2,
      sym__item,
      aux_sym_file_repeat1,
  [551] = 10,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    ACTIONS(80), 1,
      ts_builtin_sym_end,
    STATE(4), 1,
      sym__misplaced,
    STATE(5), 1,
      sym_word,
    STATE(29), 1,
      sym_line,
    STATE(31), 1,
      sym_block,
    ACTIONS(7), 2,
      sym_tolerance,
      sym_range,
    STATE(23), 2,
      sym__item,
      aux_sym_file_repeat1,
  [584] = 7,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(82), 1,
      aux_sym__ends_token1,
    ACTIONS(141), 1,
      anon_sym_LBRACE,
    ACTIONS(143), 1,
      aux_sym_word_token3,
    STATE(30), 1,
      aux_sym__ends,
    STATE(34), 1,
      sym_body,
    ACTIONS(139), 5,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
  [610] = 7,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(141), 1,
      anon_sym_LBRACE,
    ACTIONS(147), 1,
      aux_sym_word_token3,
    ACTIONS(149), 1,
      aux_sym__ends_token1,
    STATE(28), 1,
      aux_sym__ends,
    STATE(37), 1,
      sym_body,
    ACTIONS(145), 5,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
  [636] = 5,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(153), 1,
      aux_sym_word_token3,
    ACTIONS(155), 1,
      aux_sym__ends_token1,
    STATE(30), 1,
      aux_sym__ends,
    ACTIONS(151), 6,
      ts_builtin_sym_end,
      anon_sym_LBRACE,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
  [657] = 5,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(147), 1,
      aux_sym_word_token3,
    ACTIONS(158), 1,
      aux_sym__ends_token1,
    STATE(32), 1,
      aux_sym__ends,
    ACTIONS(145), 5,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
  [677] = 5,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(82), 1,
      aux_sym__ends_token1,
    ACTIONS(143), 1,
      aux_sym_word_token3,
    STATE(30), 1,
      aux_sym__ends,
    ACTIONS(139), 5,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
  [697] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(162), 1,
      aux_sym_word_token3,
    ACTIONS(160), 6,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
      aux_sym__ends_token1,
  [712] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(166), 1,
      aux_sym_word_token3,
    ACTIONS(164), 6,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
      aux_sym__ends_token1,
  [727] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(170), 1,
      aux_sym_word_token3,
    ACTIONS(168), 6,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
      aux_sym__ends_token1,
  [742] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(174), 1,
      aux_sym_word_token3,
    ACTIONS(172), 6,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
      aux_sym__ends_token1,
  [757] = 3,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(178), 1,
      aux_sym_word_token3,
    ACTIONS(176), 6,
      ts_builtin_sym_end,
      anon_sym_RBRACE,
      sym_tolerance,
      sym_range,
      aux_sym_word_token1,
      aux_sym__ends_token1,
  [772] = 4,
    ACTIONS(180), 1,
      anon_sym_DQUOTE2,
    ACTIONS(184), 1,
      sym_comment,
    STATE(39), 1,
      aux_sym_text_repeat1,
    ACTIONS(182), 2,
      sym__content,
      sym_escape,
  [786] = 4,
    ACTIONS(184), 1,
      sym_comment,
    ACTIONS(186), 1,
      anon_sym_DQUOTE2,
    STATE(40), 1,
      aux_sym_text_repeat1,
    ACTIONS(188), 2,
      sym__content,
      sym_escape,
  [800] = 4,
    ACTIONS(184), 1,
      sym_comment,
    ACTIONS(190), 1,
      anon_sym_DQUOTE2,
    STATE(40), 1,
      aux_sym_text_repeat1,
    ACTIONS(192), 2,
      sym__content,
      sym_escape,
  [814] = 4,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(9), 1,
      aux_sym_word_token1,
    ACTIONS(11), 1,
      aux_sym_word_token3,
    STATE(18), 1,
      sym_word,
  [827] = 2,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(195), 1,
      sym_figure,
  [834] = 2,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(197), 1,
      anon_sym_SOH,
  [841] = 2,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(199), 1,
      ts_builtin_sym_end,
  [848] = 2,
    ACTIONS(3), 1,
      sym_comment,
    ACTIONS(201), 1,
      sym_figure,
};

static const uint32_t ts_small_parse_table_map[] = {
  [SMALL_STATE(7)] = 0,
  [SMALL_STATE(8)] = 24,
  [SMALL_STATE(9)] = 52,
  [SMALL_STATE(10)] = 82,
  [SMALL_STATE(11)] = 110,
  [SMALL_STATE(12)] = 149,
  [SMALL_STATE(13)] = 170,
  [SMALL_STATE(14)] = 209,
  [SMALL_STATE(15)] = 230,
  [SMALL_STATE(16)] = 251,
  [SMALL_STATE(17)] = 274,
  [SMALL_STATE(18)] = 313,
  [SMALL_STATE(19)] = 334,
  [SMALL_STATE(20)] = 355,
  [SMALL_STATE(21)] = 376,
  [SMALL_STATE(22)] = 397,
  [SMALL_STATE(23)] = 418,
  [SMALL_STATE(24)] = 452,
  [SMALL_STATE(25)] = 485,
  [SMALL_STATE(26)] = 518,
  [SMALL_STATE(27)] = 551,
  [SMALL_STATE(28)] = 584,
  [SMALL_STATE(29)] = 610,
  [SMALL_STATE(30)] = 636,
  [SMALL_STATE(31)] = 657,
  [SMALL_STATE(32)] = 677,
  [SMALL_STATE(33)] = 697,
  [SMALL_STATE(34)] = 712,
  [SMALL_STATE(35)] = 727,
  [SMALL_STATE(36)] = 742,
  [SMALL_STATE(37)] = 757,
  [SMALL_STATE(38)] = 772,
  [SMALL_STATE(39)] = 786,
  [SMALL_STATE(40)] = 800,
  [SMALL_STATE(41)] = 814,
  [SMALL_STATE(42)] = 827,
  [SMALL_STATE(43)] = 834,
  [SMALL_STATE(44)] = 841,
  [SMALL_STATE(45)] = 848,
};

static const TSParseActionEntry ts_parse_actions[] = {
  [0] = {.entry = {.count = 0, .reusable = false}},
  [1] = {.entry = {.count = 1, .reusable = false}}, RECOVER(),
  [3] = {.entry = {.count = 1, .reusable = true}}, SHIFT_EXTRA(),
  [5] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_file, 0, 0, 0),
  [7] = {.entry = {.count = 1, .reusable = true}}, SHIFT(43),
  [9] = {.entry = {.count = 1, .reusable = true}}, SHIFT(7),
  [11] = {.entry = {.count = 1, .reusable = false}}, SHIFT(15),
  [13] = {.entry = {.count = 1, .reusable = true}}, SHIFT(11),
  [15] = {.entry = {.count = 1, .reusable = true}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0),
  [17] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(2),
  [20] = {.entry = {.count = 2, .reusable = false}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(9),
  [23] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(43),
  [26] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(41),
  [29] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(38),
  [32] = {.entry = {.count = 2, .reusable = false}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(7),
  [35] = {.entry = {.count = 2, .reusable = false}}, REDUCE(aux_sym_line_repeat1, 2, 0, 0), SHIFT_REPEAT(15),
  [38] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_line, 2, 0, 1),
  [40] = {.entry = {.count = 1, .reusable = true}}, SHIFT(2),
  [42] = {.entry = {.count = 1, .reusable = false}}, SHIFT(9),
  [44] = {.entry = {.count = 1, .reusable = true}}, SHIFT(41),
  [46] = {.entry = {.count = 1, .reusable = true}}, SHIFT(38),
  [48] = {.entry = {.count = 1, .reusable = false}}, SHIFT(7),
  [50] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_line, 1, 0, 0),
  [52] = {.entry = {.count = 1, .reusable = true}}, SHIFT(6),
  [54] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_line, 1, 0, 1),
  [56] = {.entry = {.count = 1, .reusable = true}}, SHIFT(3),
  [58] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_line, 2, 0, 0),
  [60] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_word, 1, 0, 0),
  [62] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_word, 1, 0, 0),
  [64] = {.entry = {.count = 1, .reusable = false}}, SHIFT(12),
  [66] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 3, 0, 0),
  [68] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 3, 0, 0),
  [70] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 1, 0, 0),
  [72] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 1, 0, 0),
  [74] = {.entry = {.count = 1, .reusable = true}}, SHIFT(42),
  [76] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 4, 0, 2),
  [78] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 4, 0, 2),
  [80] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_file, 1, 0, 0),
  [82] = {.entry = {.count = 1, .reusable = true}}, SHIFT(30),
  [84] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_word, 2, 0, 0),
  [86] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_word, 2, 0, 0),
  [88] = {.entry = {.count = 1, .reusable = true}}, SHIFT(33),
  [90] = {.entry = {.count = 1, .reusable = true}}, SHIFT(17),
  [92] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym__misplaced, 2, 0, 0),
  [94] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym__misplaced, 2, 0, 0),
  [96] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 2, 0, 2),
  [98] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 2, 0, 2),
  [100] = {.entry = {.count = 1, .reusable = true}}, SHIFT(45),
  [102] = {.entry = {.count = 1, .reusable = true}}, SHIFT(36),
  [104] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_model, 2, 0, 3),
  [106] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_model, 2, 0, 3),
  [108] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 5, 0, 5),
  [110] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 5, 0, 5),
  [112] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_text, 2, 0, 0),
  [114] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_text, 2, 0, 0),
  [116] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_text, 3, 0, 0),
  [118] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_text, 3, 0, 0),
  [120] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_number, 4, 0, 4),
  [122] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_number, 4, 0, 4),
  [124] = {.entry = {.count = 1, .reusable = true}}, REDUCE(aux_sym_file_repeat1, 2, 0, 0),
  [126] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_file_repeat1, 2, 0, 0), SHIFT_REPEAT(43),
  [129] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_file_repeat1, 2, 0, 0), SHIFT_REPEAT(7),
  [132] = {.entry = {.count = 2, .reusable = false}}, REDUCE(aux_sym_file_repeat1, 2, 0, 0), SHIFT_REPEAT(15),
  [135] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_file, 2, 0, 0),
  [137] = {.entry = {.count = 1, .reusable = true}}, SHIFT(35),
  [139] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym__item, 2, 0, 0),
  [141] = {.entry = {.count = 1, .reusable = true}}, SHIFT(13),
  [143] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym__item, 2, 0, 0),
  [145] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym__item, 1, 0, 0),
  [147] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym__item, 1, 0, 0),
  [149] = {.entry = {.count = 1, .reusable = true}}, SHIFT(28),
  [151] = {.entry = {.count = 1, .reusable = true}}, REDUCE(aux_sym__ends, 2, 0, 0),
  [153] = {.entry = {.count = 1, .reusable = false}}, REDUCE(aux_sym__ends, 2, 0, 0),
  [155] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym__ends, 2, 0, 0), SHIFT_REPEAT(30),
  [158] = {.entry = {.count = 1, .reusable = true}}, SHIFT(32),
  [160] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_body, 2, 0, 0),
  [162] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_body, 2, 0, 0),
  [164] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_block, 3, 0, 0),
  [166] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_block, 3, 0, 0),
  [168] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_body, 4, 0, 0),
  [170] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_body, 4, 0, 0),
  [172] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_body, 3, 0, 0),
  [174] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_body, 3, 0, 0),
  [176] = {.entry = {.count = 1, .reusable = true}}, REDUCE(sym_block, 2, 0, 0),
  [178] = {.entry = {.count = 1, .reusable = false}}, REDUCE(sym_block, 2, 0, 0),
  [180] = {.entry = {.count = 1, .reusable = true}}, SHIFT(20),
  [182] = {.entry = {.count = 1, .reusable = true}}, SHIFT(39),
  [184] = {.entry = {.count = 1, .reusable = false}}, SHIFT_EXTRA(),
  [186] = {.entry = {.count = 1, .reusable = true}}, SHIFT(21),
  [188] = {.entry = {.count = 1, .reusable = true}}, SHIFT(40),
  [190] = {.entry = {.count = 1, .reusable = true}}, REDUCE(aux_sym_text_repeat1, 2, 0, 0),
  [192] = {.entry = {.count = 2, .reusable = true}}, REDUCE(aux_sym_text_repeat1, 2, 0, 0), SHIFT_REPEAT(40),
  [195] = {.entry = {.count = 1, .reusable = true}}, SHIFT(8),
  [197] = {.entry = {.count = 1, .reusable = true}}, SHIFT(14),
  [199] = {.entry = {.count = 1, .reusable = true}},  ACCEPT_INPUT(),
  [201] = {.entry = {.count = 1, .reusable = true}}, SHIFT(10),
};

#ifdef __cplusplus
extern "C" {
#endif
#ifdef TREE_SITTER_HIDE_SYMBOLS
#define TS_PUBLIC
#elif defined(_WIN32)
#define TS_PUBLIC __declspec(dllexport)
#else
#define TS_PUBLIC __attribute__((visibility("default")))
#endif

TS_PUBLIC const TSLanguage *tree_sitter_pintle(void) {
  static const TSLanguage language = {
    .version = LANGUAGE_VERSION,
    .symbol_count = SYMBOL_COUNT,
    .alias_count = ALIAS_COUNT,
    .token_count = TOKEN_COUNT,
    .external_token_count = EXTERNAL_TOKEN_COUNT,
    .state_count = STATE_COUNT,
    .large_state_count = LARGE_STATE_COUNT,
    .production_id_count = PRODUCTION_ID_COUNT,
    .field_count = FIELD_COUNT,
    .max_alias_sequence_length = MAX_ALIAS_SEQUENCE_LENGTH,
    .parse_table = &ts_parse_table[0][0],
    .small_parse_table = ts_small_parse_table,
    .small_parse_table_map = ts_small_parse_table_map,
    .parse_actions = ts_parse_actions,
    .symbol_names = ts_symbol_names,
    .field_names = ts_field_names,
    .field_map_slices = ts_field_map_slices,
    .field_map_entries = ts_field_map_entries,
    .symbol_metadata = ts_symbol_metadata,
    .public_symbol_map = ts_symbol_map,
    .alias_map = ts_non_terminal_alias_map,
    .alias_sequences = &ts_alias_sequences[0][0],
    .lex_modes = ts_lex_modes,
    .lex_fn = ts_lex,
    .primary_state_ids = ts_primary_state_ids,
  };
  return &language;
}
#ifdef __cplusplus
}
#endif
