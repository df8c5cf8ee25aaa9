# Makes the reference values of R (base and the survey package) that tests/statistics/reference reads.
# Run from the project folder:
#   Rscript tests/data/reference/reference.R
suppressPackageStartupMessages(library(survey))
folder <- "tests/data/reference"
RNGkind("Mersenne-Twister", "Inversion", "Rejection")
parts <- c("write", "draw", "proportions", "rates", "orders", "clusters", "funnel",
           "standardised", "runs", "charts",
           "samples", "quantiles")
for (part in parts) {
  set.seed(20260101 + match(part, parts))
  source(file.path(folder, "r", paste0(part, ".R")))
}
