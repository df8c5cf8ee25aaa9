tails <- function(level) (1 - level) / 2

keep("wilson", "prop.test(x, n, conf.level = level, correct = FALSE)", each(counts(220), function(x, n, level)
  ends(suppressWarnings(prop.test(x, n, conf.level = level, correct = FALSE))$conf.int)))

keep("clopper-pearson", "binom.test(x, n, conf.level = level)", each(counts(220), function(x, n, level)
  ends(binom.test(x, n, conf.level = level)$conf.int)))

keep("jeffreys", "qbeta(c(tail, 1 - tail), x + 1/2, n - x + 1/2), the end at 0 or n set to 0 or 1",
  each(counts(220), function(x, n, level) {
    at <- qbeta(c(tails(level), 1 - tails(level)), x + .5, n - x + .5)
    list(lower = if (x == 0) 0 else at[1], upper = if (x == n) 1 else at[2])
  }))

# The upper tail is taken as such, not as one less the lower one.
above <- function(x, n, p) pbinom(x, n, p, lower.tail = FALSE) + dbinom(x, n, p) / 2
below <- function(x, n, p) pbinom(x - 1, n, p) + dbinom(x, n, p) / 2
keep("mid-p", "uniroot on pbinom and half of dbinom", each(counts(220), function(x, n, level) list(
  lower = if (x == 0) 0 else root(function(p) above(x, n, p) - tails(level), 0, 1),
  upper = if (x == n) 1 else root(function(p) below(x, n, p) - tails(level), 0, 1))))
