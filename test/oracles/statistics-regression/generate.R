# Values that the specs of lines, ranks, proportions, charts, replacement, stock levels and inference compare with.
# Made with R 4.2.2 and forecast 8.20; no chance is involved. Values are printed to 12 digits. The last block repeats a fit
# whose values are printed in the documentation of lme4, and needs that package.
#
# Data too long to write out here are read as CSV from the folder named by the first argument: norris.csv (x, y) and
# sleepstudy.csv (subject, day, time) repeat norris.ts and sleep-study.ts; sulfate.csv (date, ppm), lasers.csv (unit,
# hours, increase), counts.csv (defects) and proportions.csv (fraction) are used where at hand.
#
# Run: Rscript generate.R <folder>; ../r/write-values.ts writes the tables from the TypeScript data, runs this and keeps what it
# prints in values.txt with the versions; ../r/generators.spec.ts runs it again wherever R is at hand. There the blocks of
# forecast and lme4, which need packages beyond R itself, print nothing.

options(digits = 12, width = 160)
folder <- commandArgs(trailingOnly = TRUE)[1]
path_of <- function(name) file.path(folder, paste0(name, ".csv"))
has <- function(name) file.exists(path_of(name))
table_of <- function(name) read.csv(path_of(name), stringsAsFactors = FALSE)
show <- function(case, ...) {
  values <- list(...)
  for (name in names(values)) {
    cat(case, "|", name, "|", format(values[[name]], digits = 12, trim = TRUE), "\n")
  }
}

# ---- straight lines ------------------------------------------------------------------------------------------------
if (has("norris")) {
  norris <- table_of("norris")
  fit <- lm(y ~ x, norris)
  at <- data.frame(x = c(0, 500, 1100))
  show("norris",
    coefficients = coef(fit), standard_errors = summary(fit)$coefficients[, 2],
    s = summary(fit)$sigma, r_squared = summary(fit)$r.squared,
    prediction = predict(fit, at, interval = "prediction"),
    confidence = predict(fit, at, interval = "confidence")
  )
}

# Fieller's set for the x of one new observation at height y0.
inverse_of <- function(x, y, y0, level) {
  n <- length(x)
  fit <- lm(y ~ x)
  slope <- unname(coef(fit)[2])
  s2 <- sum(resid(fit)^2) / (n - 2)
  sxx <- sum((x - mean(x))^2)
  t <- qt(0.5 + level / 2, n - 2)
  g <- t^2 * s2 / (slope^2 * sxx)
  step <- (y0 - mean(y)) / slope
  half <- t * sqrt(s2) / abs(slope) * sqrt(step^2 / sxx + (1 - g) * (1 + 1 / n))
  c(mean(x) + step, mean(x) + (step - half) / (1 - g), mean(x) + (step + half) / (1 - g))
}
temperature <- seq(96, 110, 2)
shown <- c(95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21)
show("thermostat",
  y104_95 = inverse_of(temperature, shown, 104, 0.95), y100_90 = inverse_of(temperature, shown, 100, 0.9))
if (has("lasers")) {
  lasers <- table_of("lasers")
  for (unit in unique(lasers$unit)) {
    line <- coef(lm(increase ~ hours, lasers[lasers$unit == unit, ]))
    show(paste("laser", unit), time_to_10 = unname((10 - line[1]) / line[2]))
  }
}

# ---- ranks ---------------------------------------------------------------------------------------------------------
pairs_of <- function(x, y) {
  pick <- combn(length(x), 2)
  list(dx = x[pick[2, ]] - x[pick[1, ]], dy = y[pick[2, ]] - y[pick[1, ]])
}
score_variance <- function(y) {
  n <- length(y)
  ties <- table(y)
  (n * (n - 1) * (2 * n + 5) - sum(ties * (ties - 1) * (2 * ties + 5))) / 18
}
if (has("sulfate")) {
  sulfate <- table_of("sulfate")
  p <- pairs_of(sulfate$date, sulfate$ppm)
  s <- sum(sign(p$dx) * sign(p$dy))
  v <- score_variance(sulfate$ppm)
  z <- (s - sign(s)) / sqrt(v)
  slopes <- sort((p$dy / p$dx)[p$dx != 0])
  limit <- function(rank) approx(seq_along(slopes), slopes, rank)$y
  for (level in c(0.95, 0.9)) {
    half <- qnorm(0.5 + level / 2) * sqrt(v)
    show(paste("sulfate", level), limits = limit(c((length(slopes) - half) / 2, (length(slopes) + half) / 2 + 1)))
  }
  show("sulfate", score = s, variance = v, z = z, p = 2 * pnorm(-abs(z)), slope = median(slopes),
    intercept = median(sulfate$ppm) - median(slopes) * median(sulfate$date),
    tau_b = cor(sulfate$date, sulfate$ppm, method = "kendall"))
}
# Orders of n different values by number of inversions, for the exact tail of the score.
score_tail <- function(s, n) {
  counts <- 1
  for (k in 2:n) counts <- Reduce(`+`, lapply(0:(k - 1), function(i) c(rep(0, i), counts, rep(0, k - 1 - i))))
  scores <- n * (n - 1) / 2 - 2 * (seq_along(counts) - 1)
  sum(counts[scores >= s]) / sum(counts)
}
show("exact score", four = score_tail(4, 4), nine = score_tail(16, 9))

# ---- proportions ---------------------------------------------------------------------------------------------------
wilson <- function(x, n, level = 0.95) {
  z <- qnorm(0.5 + level / 2)
  (x + z^2 / 2 + c(-1, 1) * z * sqrt(z^2 / 4 + x * (1 - x / n))) / (n + z^2)
}
for (case in list(c(81, 263), c(15, 148), c(0, 20), c(1, 29))) {
  x <- case[1]
  n <- case[2]
  jeffreys <- qbeta(c(0.025, 0.975), x + 0.5, n - x + 0.5)
  if (x == 0) jeffreys[1] <- 0
  show(paste(x, "of", n), wilson = wilson(x, n), clopper_pearson = as.numeric(binom.test(x, n)$conf.int),
    jeffreys = jeffreys)
}
for (case in list(c(56, 70, 48, 80), c(9, 10, 3, 10), c(6, 7, 2, 7), c(5, 56, 0, 29))) {
  p <- case[c(1, 3)] / case[c(2, 4)]
  one <- wilson(case[1], case[2])
  two <- wilson(case[3], case[4])
  show(paste(case, collapse = " "), difference = p[1] - p[2] +
    c(-sqrt((p[1] - one[1])^2 + (two[2] - p[2])^2), sqrt((one[2] - p[1])^2 + (p[2] - two[1])^2)))
}
hits <- c(18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7)
james_stein <- function(values, variance) {
  spread <- sum((values - mean(values))^2) / variance
  factor <- 1 - (length(values) - 3) / spread
  list(centre = mean(values), spread = spread, factor = factor, values = mean(values) + factor * (values - mean(values)))
}
arcsine <- james_stein(sqrt(45) * asin(2 * hits / 45 - 1), 1)
plain <- james_stein(hits / 45, mean(hits / 45) * (1 - mean(hits / 45)) / 45)
show("batting, arcsine", centre = arcsine$centre, spread = arcsine$spread, factor = arcsine$factor,
  proportions = (1 + sin(arcsine$values / sqrt(45))) / 2)
show("batting, untransformed", factor = plain$factor, proportions = plain$values)
minus_log_likelihood <- function(logs) {
  -sum(lbeta(exp(logs[1]) + hits, exp(logs[2]) + 45 - hits) - lbeta(exp(logs[1]), exp(logs[2])))
}
best <- c(0, 1)
for (round in 1:2) {
  found <- nlm(minus_log_likelihood, best, gradtol = 1e-12, steptol = 1e-14, iterlim = 2000)
  best <- found$estimate
}
prior <- exp(best)
show("batting, beta-binomial", alpha = prior[1], beta = prior[2], mean = prior[1] / sum(prior),
  log_likelihood = -found$minimum, first_mean = (prior[1] + 18) / (sum(prior) + 45),
  first_interval = qbeta(c(0.025, 0.975), prior[1] + 18, prior[2] + 27))

# ---- charts --------------------------------------------------------------------------------------------------------
if (has("counts")) {
  centre <- mean(table_of("counts")$defects)
  show("counts", centre = centre, limits = centre + c(-3, 3) * sqrt(centre))
}
if (has("proportions")) {
  centre <- mean(table_of("proportions")$fraction)
  show("proportions", centre = centre, limits = centre + c(-3, 3) * sqrt(centre * (1 - centre) / 50))
}
funnel <- function(n, target, p) {
  r <- qbinom(p, n, target)
  beyond <- (pbinom(r, n, target) - p) / (pbinom(r, n, target) - pbinom(r - 1, n, target))
  max(0, (r - beyond) / n)
}
for (n in c(10, 25, 50, 100, 250)) {
  show(paste("funnel", n), inner = sapply(c(0.025, 0.975), funnel, n = n, target = 0.08),
    outer = sapply(c(0.001, 0.999), funnel, n = n, target = 0.08))
}
for (count in c(0, 1, 10)) show(paste("poisson", count), limits = as.numeric(poisson.test(count)$conf.int))

# ---- replacement ---------------------------------------------------------------------------------------------------
show("uniform life", age = 40000 * (sqrt(3) - 1), ross_age = -60 + sqrt(4800))
age_of <- function(shape, scale, planned, failure) {
  survival <- function(t) exp(-(t / scale)^shape)
  cycle <- function(t) integrate(survival, 0, t, rel.tol = 1e-13, subdivisions = 2000)$value
  hazard <- function(t) shape / scale * (t / scale)^(shape - 1)
  balance <- function(t) hazard(t) * cycle(t) - (1 - survival(t)) - planned / (failure - planned)
  age <- uniroot(balance, scale * c(1e-4, 20), tol = 1e-12 * scale)$root
  rate <- (planned + (failure - planned) * (1 - survival(age))) / cycle(age)
  c(age, rate, 1 - rate * scale * gamma(1 + 1 / shape) / failure, cycle(age), 1 - survival(age))
}
show("weibull", shape2 = age_of(2, 1000, 1, 10), shape3 = age_of(3, 10, 1, 5))

# ---- stock levels --------------------------------------------------------------------------------------------------
for (mean in c(0.5, 1, 2, 4.2)) {
  x <- 0:300
  show(paste("base stock", mean), levels = qpois(c(0.9, 0.95, 0.99), mean),
    backorders = sapply(0:8, function(level) sum(pmax(x - level, 0) * dpois(x, mean))))
}
normal_level <- function(over, under, mean, sd) {
  z <- qnorm(under / (under + over))
  c(mean + z * sd, (over + under) * dnorm(z) * sd)
}
show("newsvendor", day = normal_level(0.18, 0.7, 50, 8), lead_time = normal_level(0.18, 0.7, 250, 8 * sqrt(5)))
poisson_cost <- function(level, over, under, mean) {
  x <- 0:2000
  sum((over * pmax(level - x, 0) + under * pmax(x - level, 0)) * dpois(x, mean))
}
show("newsvendor, Poisson", levels = c(qpois(0.8, 6), qpois(0.7 / 0.88, 50)),
  costs = c(poisson_cost(8, 1, 4, 6), poisson_cost(5, 1, 4, 6), poisson_cost(56, 0.18, 0.7, 50)))
demand <- c(0, 2, 0, 1, 0, 11, 0, 0, 0, 0, 2, 0, 6, 3, 0, 0, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0, 3, 1, 0, 0, 1, 0, 1, 0, 0)
for (alpha in c(0.1, 0.2)) {
  smooth <- function(values) Reduce(function(level, value) level + alpha * (value - level), values)
  size <- smooth(demand[demand > 0])
  interval <- smooth(diff(c(0, which(demand > 0))))
  show(paste("productC", alpha), size = size, interval = interval, croston = size / interval,
    syntetos_boylan = (1 - alpha / 2) * size / interval)
  if (requireNamespace("forecast", quietly = TRUE)) {
    show(paste("productC", alpha), forecast = as.numeric(forecast::croston(ts(demand), h = 1, alpha = alpha)$mean))
  }
}

# ---- inference -----------------------------------------------------------------------------------------------------
bayes <- function(prior, sensitivity, false_positive) {
  prior * sensitivity / (prior * sensitivity + (1 - prior) * false_positive)
}
show("bayes", eddy = bayes(0.01, 0.8, 0.096), gigerenzer = bayes(0.008, 0.9, 0.07))
strengths <- c(0.4, 0.8, 0.9)
priors <- c(0.1, 0.05, 0.01)
states <- as.matrix(expand.grid(0:1, 0:1, 0:1))
joint <- apply(states, 1, function(on) prod(ifelse(on == 1, priors, 1 - priors)) * (1 - prod((1 - strengths)^on)))
show("fever", evidence = sum(joint), marginals = colSums(states * joint) / sum(joint))

# ---- lines of several units ----------------------------------------------------------------------------------------
if (has("sleepstudy") && requireNamespace("lme4", quietly = TRUE)) {
  fit <- lme4::lmer(time ~ day + (day | subject), table_of("sleepstudy"), REML = TRUE)
  print(summary(fit))
  print(head(lme4::ranef(fit)$subject, 2))
}
