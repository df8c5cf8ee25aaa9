# The variance is survey's, with its K/(K − 1); Wilson's limits at the effective number are written
# out here, for survey has none.
wilson_at <- function(p, n, q) {
  middle <- p + q^2 / (2 * n)
  half <- q * sqrt(p * (1 - p) / n + q^2 / (4 * n^2))
  c(middle - half, middle + half) / (1 + q^2 / n)
}

clustered <- function(data, level) {
  k <- nrow(data); n <- sum(data$units); p <- sum(data$events) / n
  none <- list(estimate = p, se = NA, deff = NA, effective = NA, lower = NA, upper = NA)
  if (k < 2) return(none)
  if (p == 0 || p == 1) {
    both <- binom.test(p * k, k, conf.level = level)$conf.int
    return(modifyList(none, list(se = 0, lower = both[1], upper = both[2])))
  }
  data$id <- seq_len(k)
  design <- svydesign(ids = ~id, weights = ~one, data = transform(data, one = 1))
  se <- as.numeric(SE(svyratio(~events, ~units, design)))
  deff <- se^2 / (p * (1 - p) / n)
  effective <- n / max(1, deff)
  both <- wilson_at(p, effective, qt(1 - (1 - level) / 2, k - 1))
  list(estimate = p, se = se, deff = deff, effective = effective, lower = both[1], upper = both[2])
}

keep("clustered-proportion",
  "survey: SE(svyratio(~events, ~units, svydesign(ids = ~id))); limits at the effective number in plain R",
  lapply(seq_len(230), function(i) {
    k <- if (i <= 6) 1 else if (i <= 16) 2 else sample(3:40, 1)
    at <- level(1)
    data <- clusters(k, rates(1))
    c(list(events = I(data$events), units = I(data$units), level = at), clustered(data, at))
  }))

# F is the share at or below the median; its variance is survey's of the indicator.
woodruff <- function(values, id, level) {
  k <- length(unique(id)); n <- length(values)
  middle <- median(values)
  none <- list(estimate = middle, lower = NA, upper = NA, deff = NA)
  if (k < 2) return(none)
  at <- as.numeric(values <= middle)
  share <- mean(at)
  if (share == 1) return(none)
  v <- as.numeric(SE(svymean(~at, svydesign(ids = ~id, weights = ~one, data = data.frame(at, id, one = 1)))))^2
  half <- qt(1 - (1 - level) / 2, k - 1) * sqrt(max(v, share * (1 - share) / n))
  deff <- v / (share * (1 - share) / n)
  if (.5 - half <= 0 || .5 + half >= 1) return(none)
  both <- unname(quantile(values, .5 + c(-half, half), type = 7))
  list(estimate = middle, lower = both[1], upper = both[2], deff = deff)
}

grouped <- function() {
  k <- sample(c(2:40), 1)
  id <- rep(seq_len(k), sample(4, k, replace = TRUE))
  values <- round(30 + 6 * rnorm(k)[id] + 8 * rnorm(length(id)), sample(0:2, 1))
  list(values = values, id = id)
}
lists <- function(group) lapply(unname(split(group$values, group$id)), I)

keep("clustered-median", "survey: svymean of the indicator; Woodruff's ends in plain R by quantile(type = 7)",
  lapply(seq_len(220), function(i) {
    group <- grouped(); at <- level(1)
    c(list(clusters = lists(group), level = at), woodruff(group$values, group$id, at))
  }))

keep("median-difference", "plain R: square-and-add of the ends made as in clustered-median.json",
  lapply(seq_len(200), function(i) {
    first <- grouped(); second <- grouped(); at <- .95
    a <- woodruff(first$values, first$id, at); b <- woodruff(second$values, second$id, at)
    d <- b$estimate - a$estimate
    list(first = lists(first), second = lists(second), level = at, estimate = d,
      lower = d - sqrt((b$estimate - b$lower)^2 + (a$upper - a$estimate)^2),
      upper = d + sqrt((b$upper - b$estimate)^2 + (a$estimate - a$lower)^2))
  }))
