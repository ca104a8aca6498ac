// Runs the tree-sitter grammar for tree-sitter.test.ts, on the runtime that editors have. Reads a query file (its path is the
// one argument) and, from standard input, texts: for each its length in bytes, a line end, and the bytes. Writes JSON, one
// line for each text: its nodes in order, and what the query captures. Of predicates it knows `any-of?`, as do all editors.
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <tree_sitter/api.h>

const TSLanguage *tree_sitter_pintle(void);

static char *read_file(const char *path, size_t *size) {
  FILE *file = fopen(path, "rb");
  if (file == NULL) exit(3);
  fseek(file, 0, SEEK_END);
  *size = (size_t)ftell(file);
  rewind(file);
  char *text = malloc(*size + 1);
  if (fread(text, 1, *size, file) != *size) exit(3);
  text[*size] = 0;
  fclose(file);
  return text;
}

static void write_string(const char *text, size_t size) {
  putchar('"');
  for (size_t i = 0; i < size; i++) {
    const unsigned char c = (unsigned char)text[i];
    if (c == '"' || c == '\\') printf("\\%c", c);
    else if (c < 32) printf("\\u%04x", c);
    else putchar(c);
  }
  putchar('"');
}

static bool first;

static void write_nodes(TSTreeCursor *cursor, unsigned depth) {
  const TSNode node = ts_tree_cursor_current_node(cursor);
  const char *type = ts_node_type(node);
  const char *field = ts_tree_cursor_current_field_name(cursor);
  printf("%s[", first ? "" : ",");
  first = false;
  write_string(type, strlen(type));
  printf(",%u,%u,%u,", ts_node_start_byte(node), ts_node_end_byte(node), depth);
  write_string(field == NULL ? "" : field, field == NULL ? 0 : strlen(field));
  printf(",%d,%d]", ts_node_is_named(node), ts_node_is_missing(node));
  if (!ts_tree_cursor_goto_first_child(cursor)) return;
  do write_nodes(cursor, depth + 1);
  while (ts_tree_cursor_goto_next_sibling(cursor));
  ts_tree_cursor_goto_parent(cursor);
}

static bool holds(const TSQuery *query, const TSQueryMatch *match, const char *text) {
  uint32_t steps;
  const TSQueryPredicateStep *step = ts_query_predicates_for_pattern(query, match->pattern_index, &steps);
  for (uint32_t i = 0; i < steps; i++) {
    uint32_t length;
    if (strcmp(ts_query_string_value_for_id(query, step[i].value_id, &length), "any-of?") != 0) exit(7);
    const char *word = NULL;
    uint32_t size = 0;
    for (uint16_t c = 0; c < match->capture_count; c++)
      if (match->captures[c].index == step[i + 1].value_id) {
        word = text + ts_node_start_byte(match->captures[c].node);
        size = ts_node_end_byte(match->captures[c].node) - ts_node_start_byte(match->captures[c].node);
      }
    bool found = false;
    for (i += 2; step[i].type == TSQueryPredicateStepTypeString; i++) {
      const char *one = ts_query_string_value_for_id(query, step[i].value_id, &length);
      if (word != NULL && length == size && memcmp(one, word, size) == 0) found = true;
    }
    if (!found) return false;
  }
  return true;
}

int main(int count, char **arguments) {
  if (count != 2) return 2;
  size_t query_size;
  char *source = read_file(arguments[1], &query_size);
  uint32_t error_offset;
  TSQueryError error;
  TSQuery *query = ts_query_new(tree_sitter_pintle(), source, (uint32_t)query_size, &error_offset, &error);
  if (query == NULL) {
    fprintf(stderr, "the query is wrong at byte %u, kind %d\n", error_offset, error);
    return 4;
  }
  TSParser *parser = ts_parser_new();
  if (!ts_parser_set_language(parser, tree_sitter_pintle())) return 5;
  size_t size;
  while (scanf("%zu", &size) == 1) {
    getchar();
    char *text = malloc(size + 1);
    if (fread(text, 1, size, stdin) != size) return 6;
    TSTree *tree = ts_parser_parse_string(parser, NULL, text, (uint32_t)size);
    const TSNode root = ts_tree_root_node(tree);
    printf("{\"error\":%s,\"nodes\":[", ts_node_has_error(root) ? "true" : "false");
    first = true;
    TSTreeCursor nodes = ts_tree_cursor_new(root);
    write_nodes(&nodes, 0);
    ts_tree_cursor_delete(&nodes);
    printf("],\"captures\":[");
    TSQueryCursor *cursor = ts_query_cursor_new();
    // Half of what editors allow: what is beyond it would be left out.
    ts_query_cursor_set_match_limit(cursor, 128);
    ts_query_cursor_exec(cursor, query, root);
    TSQueryMatch match;
    first = true;
    while (ts_query_cursor_next_match(cursor, &match)) {
      if (!holds(query, &match, text)) continue;
      for (uint16_t i = 0; i < match.capture_count; i++) {
        uint32_t length;
        const char *name = ts_query_capture_name_for_id(query, match.captures[i].index, &length);
        if (name[0] == '_') continue;
        printf("%s[", first ? "" : ",");
        first = false;
        write_string(name, length);
        printf(",%u,%u]", ts_node_start_byte(match.captures[i].node), ts_node_end_byte(match.captures[i].node));
      }
    }
    printf("],\"forgot\":%s}\n", ts_query_cursor_did_exceed_match_limit(cursor) ? "true" : "false");
    ts_query_cursor_delete(cursor);
    ts_tree_delete(tree);
    free(text);
  }
  ts_parser_delete(parser);
  ts_query_delete(query);
  free(source);
  return 0;
}
