# Rates and fair ratios of seasons, by the survey and epiR packages: in.csv out.csv
suppressMessages({
  library(survey)
  library(epiR)
})
files <- commandArgs(trailingOnly = TRUE)
trips <- read.csv(files[1])

relative <- function(found) as.numeric(SE(found)) / as.numeric(coef(found))

of_season <- function(rows) {
  fished <- rows[rows$effort_this > 0, ]
  rate <- svyratio(~catch_this, ~effort_this, svydesign(~1, data = fished, weights = ~one))
  both <- rows[rows$effort_this > 0 & rows$effort_against > 0, ]
  both$A <- with(both, catch_this * effort_against / (effort_this + effort_against))
  both$B <- with(both, catch_against * effort_this / (effort_this + effort_against))
  within <- svyratio(~A, ~B, svydesign(~1, data = both, weights = ~one))
  columns <- c("catch_this", "effort_this", "catch_against", "effort_against")
  tables <- apply(both[columns], 1, function(x) matrix(as.numeric(x), 2, byrow = TRUE))
  tables <- array(tables, c(2, 2, nrow(both)))
  strata <- epi.2by2(tables, method = "cohort.time", conf.level = 0.95, units = 1)
  haenszel <- strata$massoc.detail$IRR.mh.wald

  kinds <- sort(unique(rows$kind))
  for (kind in kinds) for (column in columns) {
    rows[[paste0(column, kind)]] <- rows[[column]] * (rows$kind == kind)
  }
  names <- as.vector(outer(columns, kinds, paste0))
  totals <- svytotal(
    as.formula(paste("~", paste(names, collapse = "+"))),
    svydesign(~1, strata = ~kind, data = rows, weights = ~one)
  )
  side <- function(fish, hours) {
    part <- "catch_%s%s*effort_%s%s/(effort_this%s+effort_against%s)"
    paste(sprintf(part, fish, kinds, hours, kinds, kinds, kinds), collapse = "+")
  }
  ratio <- sprintf("log((%s)/(%s))", side("this", "against"), side("against", "this"))
  conditions <- svycontrast(totals, parse(text = ratio)[[1]])
  data.frame(
    rate = as.numeric(coef(rate)), rate_error = as.numeric(SE(rate)),
    trip_ratio = haenszel$est, trip_low = haenszel$lower, trip_high = haenszel$upper,
    trip_error = relative(within),
    condition_ratio = exp(as.numeric(coef(conditions))), condition_error = as.numeric(SE(conditions))
  )
}

trips$one <- 1
made <- do.call(rbind, lapply(split(trips, trips$season), of_season))
write.csv(made, files[2], row.names = FALSE)
