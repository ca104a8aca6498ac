;;; pintle.el --- Powered-gate installations as text  -*- lexical-binding: t -*-

;; Package-Requires: ((emacs "28.1") (eglot "1.9"))

;;; Commentary:

;; .gate files: colours, indentation, and the language server through eglot.

;;; Code:

(require 'cl-lib)
(require 'project)
(require 'eglot)

(defgroup pintle nil "Powered-gate installations as text." :group 'languages)

(defcustom pintle-command '("pintle" "serve" "--stdio")
  "How the language server is started."
  :type '(repeat string))

(defcustom pintle-settings nil
  "Settings by their names below `pintle.', for example (:values (:show :json-false))."
  :type 'plist)

(defconst pintle--word "[^][:space:]{}\":,#[]+" "A word: a name, a number, a unit.")

(defvar pintle-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?\\ "\\" table)
    (modify-syntax-entry ?' "_" table)
    (dolist (sign '(?- ?_ ?. ?/ ?% ?* ?+)) (modify-syntax-entry sign "_" table))
    table)
  "Remarks, texts and names.")

(defconst pintle-font-lock-keywords
  `((,(concat "^[ \t]*\\(" pintle--word "\\)[^\n\"#]*\\(?:\"[^\n\"]*\"[^\n\"#]*\\)*{") 1 font-lock-keyword-face)
    (,(concat "^[ \t]*" pintle--word "[ \t]+\\(" pintle--word "\\)[^\n\"#]*\\(?:\"[^\n\"]*\"[^\n\"#]*\\)*{") 1 font-lock-type-face)
    (,(concat "^[ \t]*\\(" pintle--word "\\)") 1 font-lock-variable-name-face)
    (,(concat ":[ \t]*\\(" pintle--word "\\)") 1 font-lock-type-face)
    ("\\(?:^\\|[ \t,.±]\\)\\([-+−]?[0-9]+\\(?:[.-][0-9]+\\)*\\)" 1 font-lock-constant-face))
  "Colours by the look of the lines: what opens a block, what it is called, what is said of it.")

(defun pintle-indent-line ()
  "Indent by two for each block around the line."
  (let* ((closes (save-excursion (back-to-indentation) (eq (char-after) ?})))
         (depth (save-excursion (car (syntax-ppss (line-beginning-position)))))
         (column (* 2 (max 0 (if closes (1- depth) depth)))))
    (if (<= (current-column) (current-indentation))
        (indent-line-to column)
      (save-excursion (indent-line-to column)))))

(defun pintle--root (folder)
  "Where no other project holds the file in FOLDER: the parent of its own folder, so that `../library/…' works."
  ;; By the file and not by FOLDER: eglot calls this with the root itself.
  (let ((own (if buffer-file-name (file-name-directory buffer-file-name) folder)))
    (cons 'transient (file-name-directory (directory-file-name own)))))

;;;###autoload
(define-derived-mode pintle-mode prog-mode "Pintle"
  "For powered-gate installations."
  (setq-local comment-start "# "
              comment-start-skip "#+[ \t]*"
              indent-tabs-mode nil
              tab-width 2
              indent-line-function #'pintle-indent-line
              electric-indent-chars '(?\n ?})
              font-lock-defaults '(pintle-font-lock-keywords))
  (add-hook 'project-find-functions #'pintle--root 90 t))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.gate\\'" . pintle-mode))

;; Emacs 30 takes one character too many where the parts of a signature come as numbers, and stops; so they come as words.
(defclass pintle-server (eglot-lsp-server) () "Pintle's language server.")

(cl-defmethod eglot-client-capabilities ((_server pintle-server))
  "What eglot can take, but for numbers in signatures."
  (let* ((all (cl-call-next-method))
         (signature (plist-get (plist-get (plist-get all :textDocument) :signatureHelp) :signatureInformation)))
    (when signature (plist-put signature :parameterInformation '(:labelOffsetSupport :json-false)))
    all))

(cl-defmethod eglot-handle-request ((_server pintle-server) (_method (eql workspace/configuration)) &key items)
  "The settings, where there are any; else what the directory says."
  (if pintle-settings (apply #'vector (mapcar (lambda (_) pintle-settings) items)) (cl-call-next-method)))

(add-to-list 'eglot-server-programs '(pintle-mode . (lambda (&rest _) (cons 'pintle-server pintle-command))))
(add-hook 'pintle-mode-hook #'eglot-ensure)

(provide 'pintle)
;;; pintle.el ends here
