tail <- function(n) sample(c(.0005, .001, .005, .01, .025, .05, .1, .5, .9, .95, .975, .999), n, replace = TRUE)
keep("t-quantiles", "qt(p, df)", each(data.frame(p = tail(210), df = sizes(210, 1e5)), function(p, df) list(value = qt(p, df))))
keep("beta-quantiles", "qbeta(p, a, b)", each(data.frame(p = tail(210), a = sizes(210, 500) - .5, b = sizes(210, 1e5) - .5),
  function(p, a, b) list(value = qbeta(p, a, b))))
keep("chi-squared-quantiles", "qchisq(p, df)", each(data.frame(p = tail(210), df = sizes(210, 200)), function(p, df) list(value = qchisq(p, df))))
# Down to 1e-9: below, the normal quantile of the library under test is good to 1e-4 only, and no level
# in use reaches there.
keep("normal-quantiles", "qnorm(p)", each(data.frame(p = c(runif(190), 10^-runif(20, 2, 9))), function(p) list(value = qnorm(p))))
