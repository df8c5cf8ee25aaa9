tail <- function(n) sample(c(.0005, .001, .005, .01, .025, .05, .1, .5, .9, .95, .975, .999), n, replace = TRUE)
keep("t-quantiles", "qt(p, df)", each(data.frame(p = tail(210), df = sizes(210, 500)), function(p, df) list(value = qt(p, df))))
keep("beta-quantiles", "qbeta(p, a, b)", each(data.frame(p = tail(210), a = sizes(210, 500) - .5, b = sizes(210, 5000) - .5),
  function(p, a, b) list(value = qbeta(p, a, b))))
keep("gamma-quantiles", "qgamma(p, shape)", each(data.frame(p = tail(210), shape = sizes(210, 3000)), function(p, shape) list(value = qgamma(p, shape))))
keep("chi-squared-quantiles", "qchisq(p, df)", each(data.frame(p = tail(210), df = sizes(210, 200)), function(p, df) list(value = qchisq(p, df))))
keep("normal-quantiles", "qnorm(p)", each(data.frame(p = c(runif(190), 10^-runif(20, 2, 15))), function(p) list(value = qnorm(p))))
