# One file a family: how it was made, and its cases as flat records with every digit of a double.

digits <- function(x) {
  text <- rep(NA_character_, length(x))
  for (d in c(6, 15, 16, 17)) {
    shorter <- sprintf("%.*g", d, x)
    open <- is.na(text) & !is.na(x) & suppressWarnings(as.numeric(shorter)) == x
    text[open] <- shorter[open]
  }
  if (any(is.infinite(x))) stop("infinite")
  ifelse(is.na(text), "null", text)
}

json <- function(x) {
  if (is.null(x)) return("null")
  if (is.list(x) && is.null(names(x))) return(paste0("[", paste(vapply(x, json, ""), collapse = ","), "]"))
  if (is.list(x)) {
    values <- vapply(x, json, "")
    return(paste0("{", paste0('"', names(x), '":', values, collapse = ","), "}"))
  }
  text <- if (is.character(x)) paste0('"', x, '"') else if (is.logical(x) && !all(is.na(x))) ifelse(is.na(x), "null", tolower(x)) else digits(as.numeric(x))
  if (length(x) == 1 && !inherits(x, "AsIs")) text else paste0("[", paste(text, collapse = ","), "]")
}

# cases: a list of named lists; I(...) keeps a vector of length one a list.
keep <- function(family, reference, cases) {
  stopifnot(length(cases) >= 200)
  head <- list(reference = reference, command = "Rscript tests/data/reference/reference.R",
               versions = list(R = as.character(getRversion()), survey = as.character(packageVersion("survey"))))
  text <- c(sub("}$", ',"cases":[', json(head)),
            paste0(vapply(cases, json, ""), c(rep(",", length(cases) - 1), "")), "]}")
  file <- file.path(folder, paste0(family, ".json"))
  writeLines(text, file)
  cat(sprintf("%-28s %4d cases %7d bytes\n", family, length(cases), file.size(file)))
}

# One record a row of a data frame, with what `make` adds to it.
each <- function(rows, make) {
  lapply(seq_len(nrow(rows)), function(i) {
    row <- as.list(rows[i, , drop = FALSE])
    c(row, do.call(make, row))
  })
}

ends <- function(pair) list(lower = pair[1], upper = pair[2])
