keep("standardised-ratio", "poisson.test(observed, expected, conf.level = level)",
  each(rbind(data.frame(observed = rpois(215, exp(runif(215, -1, 5))), expected = exp(runif(215, -1, 5)), level = level(215)),
             data.frame(observed = 0, expected = c(.01, 1, 7.5), level = .95)), function(observed, expected, level) {
    test <- poisson.test(observed, expected, conf.level = level)
    list(ratio = unname(test$estimate), lower = test$conf.int[1], upper = test$conf.int[2])
  }))

keep("expected", "plain R: units times reference events over reference units, strata under 20 reference units or without another's left out",
  lapply(seq_len(200), function(i) {
    k <- sample(1:12, 1); reference <- sizes(k, 300); units <- pmin(reference, sizes(k, 60)); events <- rbinom(k, reference, .1)
    used <- reference >= 20 & reference > units
    list(units = I(units), referenceEvents = I(events), referenceUnits = I(reference),
      expected = sum((units * events / reference)[used]), usedUnits = sum(units[used]), leftStrata = sum(!used), leftUnits = sum(units[!used]))
  }))

# The product form keeps its digits near no extra variation; optim finds the neighbourhood, Newton's
# steps on the written-out derivatives the maximum.
before <- function(count) if (count == 0) numeric(0) else seq_len(count) - 1
terms <- function(x, n, m, t) {
  sums <- c(0, 0, 0, 0, 0, 0)
  for (i in seq_along(x)) {
    a <- before(x[i]); b <- before(n[i] - x[i]); j <- before(n[i])
    A <- m + a * t; B <- 1 - m + b * t; C <- 1 + j * t
    sums <- sums + c(sum(log(A)) + sum(log(B)) - sum(log(C)), sum(1 / A) - sum(1 / B), sum(a / A) + sum(b / B) - sum(j / C),
      -sum(1 / A^2) - sum(1 / B^2), -sum(a / A^2) + sum(b / B^2), -sum(a^2 / A^2) - sum(b^2 / B^2) + sum(j^2 / C^2))
  }
  sums
}
fit <- function(x, n) {
  at <- sum(x) / sum(n)
  if (terms(x, n, at, 0)[3] <= 0) return(c(at, 0, terms(x, n, at, 0)[1]))
  from <- optim(c(qlogis(at), -3), function(u) -terms(x, n, plogis(u[1]), exp(u[2]))[1], control = list(reltol = 1e-14, maxit = 5000))$par
  u <- c(plogis(from[1]), exp(from[2]))
  for (step in 1:60) {
    s <- terms(x, n, u[1], u[2])
    u <- u - solve(matrix(s[c(4, 5, 5, 6)], 2), s[2:3])
  }
  c(u, terms(x, n, u[1], u[2])[1])
}
keep("shrinkage", "plain R: optim, then Newton, on the product form of the beta-binomial likelihood", lapply(seq_len(200), function(i) {
  k <- sample(4:15, 1); n <- sample(5:60, k, replace = TRUE); m <- runif(1, .05, .9); s <- sample(c(3, 10, 40), 1)
  repeat { x <- rbinom(k, n, rbeta(k, m * s, (1 - m) * s)); if (sum(x) > 0 && sum(x) < sum(n)) break }
  at <- fit(x, n)
  list(events = x, units = n, mu = at[1], theta = at[2], logLikelihood = at[3],
    shrunken = if (at[2] == 0) at[1] else (x[1] + at[1] / at[2]) / (n[1] + 1 / at[2]), reliability = if (at[2] == 0) 0 else n[1] / (n[1] + 1 / at[2]))
}))
