-- Pintle in neovim: .gate files, the language server, and colours. Copy to ~/.config/nvim/plugin/pintle.lua.
local command = { 'pintle', 'serve', '--stdio' }
local settings = {} -- by their names below `pintle.`, for example { values = { show = false } }

local group = vim.api.nvim_create_augroup('pintle', {})

vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  group = group,
  pattern = '*.gate',
  callback = function(event) vim.bo[event.buf].filetype = 'pintle' end,
})

-- Keys as neovim 0.11 has them of itself, for those before it; and the derived values, where neovim can show them (0.10).
local function attached(_, buffer)
  local keys = { K = 'hover', gd = 'definition', grn = 'rename', gra = 'code_action', grr = 'references', gO = 'document_symbol' }
  for key, action in pairs(keys) do
    vim.keymap.set('n', key, function() vim.lsp.buf[action]() end, { buffer = buffer, desc = 'Pintle: ' .. action:gsub('_', ' ') })
  end
  vim.bo[buffer].omnifunc = 'v:lua.vim.lsp.omnifunc'
  if vim.lsp.inlay_hint then vim.lsp.inlay_hint.enable(true, { bufnr = buffer }) end
end

local server = { name = 'pintle', cmd = command, settings = { pintle = settings }, init_options = { settings = settings }, on_attach = attached }

-- Before 0.11: one server for each root, and one for all files that have none.
local running = {}
local function attach(buffer)
  local name = vim.api.nvim_buf_get_name(buffer)
  local marker = vim.fn.finddir('.git', vim.fn.fnamemodify(name, ':p:h') .. ';')
  local root = marker ~= '' and vim.fn.fnamemodify(marker, ':p:h:h') or nil
  local config = vim.tbl_extend('force', server, { root_dir = root })
  if vim.lsp.start then return vim.lsp.start(config, { bufnr = buffer }) end
  local key = root or ''
  if not running[key] or vim.lsp.client_is_stopped(running[key]) then running[key] = vim.lsp.start_client(config) end
  vim.lsp.buf_attach_client(buffer, running[key])
end

if vim.lsp.config then
  vim.lsp.config('pintle', vim.tbl_extend('force', server, { filetypes = { 'pintle' }, root_markers = { '.git' } }))
  vim.lsp.enable('pintle')
end

-- Colours by tree-sitter where its parser is installed, else by the look of the lines.
local function colour(buffer)
  if vim.treesitter.start and pcall(vim.treesitter.start, buffer, 'pintle') then return end
  vim.api.nvim_buf_call(buffer, function()
    vim.cmd([[
      syntax clear
      syntax match pintleLine /\v^\s*\zs[^ \t{}":,#]+/ nextgroup=pintleRest
      syntax match pintleBlock /\v^\s*\zs[^ \t{}":,#]+\ze[^"#]*("[^"]*"[^"#]*)*\{/ nextgroup=pintleName skipwhite
      syntax match pintleName /\v[^ \t{}":,#]+/ contained
      syntax match pintleModel /\v:\s*\zs[^ \t{}":,#]+/
      syntax match pintleNumber /\v(^|[ \t±.,])\zs[-+−]?\d+(\.\d+)?>/
      syntax match pintleDate /\v<\d{4}-\d\d-\d\d>/
      syntax match pintleEscape /\\./ contained
      syntax region pintleText start=/"/ skip=/\\./ end=/"/ end=/$/ contains=pintleEscape
      syntax match pintleComment /#.*/
      highlight default link pintleLine Identifier
      highlight default link pintleBlock Statement
      highlight default link pintleName Type
      highlight default link pintleModel Type
      highlight default link pintleNumber Number
      highlight default link pintleDate Constant
      highlight default link pintleText String
      highlight default link pintleEscape SpecialChar
      highlight default link pintleComment Comment
    ]])
  end)
end

vim.api.nvim_create_autocmd('FileType', {
  group = group,
  pattern = 'pintle',
  callback = function(event)
    vim.bo[event.buf].commentstring = '# %s'
    vim.bo[event.buf].expandtab, vim.bo[event.buf].shiftwidth, vim.bo[event.buf].tabstop = true, 2, 2
    colour(event.buf)
    if not vim.lsp.config then attach(event.buf) end
  end,
})
