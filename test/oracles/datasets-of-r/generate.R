# Data sets that R and its package survival ship, with what R makes of them, for specs that know neither. Prints a line a
# column: case | name | values to 15 digits, NA where there is none; nothing is read and no chance is involved.
#
# Run: Rscript generate.R; ../r/write-values.ts keeps what it prints in values.txt with the versions.

suppressMessages(library(survival))
options(digits = 15, width = 160)
show <- function(case, ...) {
  values <- list(...)
  for (name in names(values)) {
    written <- vapply(as.numeric(values[[name]]), format, "", digits = 15, trim = TRUE)
    cat(case, "|", name, "|", written, "\n")
  }
}
strict <- survreg.control(rel.tolerance = 1e-14, iter.max = 200)

# ---- product-limit curves --------------------------------------------------------------------------------------------
curves <- function(case, y, entry = NULL) {
  times <- if (is.null(entry)) list(age = y[, 1], event = y[, 2]) else list(age = y[, 2], event = y[, 3], entry = entry)
  do.call(show, c(case, times))
  for (form in c("plain", "log", "log-log")) {
    s <- summary(survfit(y ~ 1, conf.type = form))
    if (form == "plain") show(case, at = s$time, at_risk = s$n.risk, survival = s$surv, se = s$std.err)
    do.call(show, setNames(list(case, s$lower, s$upper), c("", paste(c("lower", "upper"), form))))
  }
  q <- quantile(survfit(y ~ 1, conf.type = "log-log"), c(0.25, 0.5))
  show(case, quartile = c(q$quantile[1], q$lower[1], q$upper[1]), median = c(q$quantile[2], q$lower[2], q$upper[2]))
}
curves("lung", Surv(lung$time, lung$status == 2))
curves("ovarian", Surv(ovarian$futime, ovarian$fustat))
curves("aml", Surv(aml$time, aml$status))
# Patients wait for a transplant and go on with one: two rows, the second entering late.
curves("heart", Surv(heart$start, heart$stop, heart$event), heart$start)

two_groups <- function(case, y, group) {
  test <- survdiff(y ~ group)
  show(case, age = y[, 1], event = y[, 2], group = as.integer(factor(group)) - 1,
    observed = test$obs, expected = test$exp, variance = test$var[1, 1], chi_square = test$chisq,
    p = pchisq(test$chisq, 1, lower.tail = FALSE))
}
two_groups("veteran by treatment", Surv(veteran$time, veteran$status), veteran$trt)
two_groups("aml by maintenance", Surv(aml$time, aml$status), aml$x)

# ---- life distributions ----------------------------------------------------------------------------------------------
fits <- function(case, lower, upper, weights = rep(1, length(lower))) {
  show(case, lower = lower, upper = upper, weights = weights)
  some <- weights > 0
  y <- Surv(ifelse(lower == 0, NA, lower), ifelse(is.infinite(upper), NA, upper), type = "interval2")[some]
  weights <- weights[some]
  for (family in c("weibull", "lognormal", "exponential")) {
    f <- survreg(y ~ 1, weights = weights, dist = family, control = strict)
    v <- vcov(f)
    z <- qnorm(0.975)
    q <- if (family == "lognormal") qnorm(0.1) else log(-log(0.9))
    gradient <- if (family == "exponential") 1 else c(1, f$scale * q)
    se <- sqrt(drop(t(gradient) %*% v %*% gradient))
    life <- exp(coef(f) + f$scale * q + c(0, -1, 1) * z * se)
    show(paste(case, family), mu = coef(f), sigma = f$scale, log_likelihood = f$loglik[1], covariance = v, b10 = life)
  }
}
right <- function(case, time, event) fits(case, time, ifelse(event == 1, time, Inf))
right("lung lives", lung$time, lung$status == 2)
right("ovarian lives", ovarian$futime, ovarian$fustat)
right("capacitor lives", capacitor$time, capacitor$status)
right("veteran lives", veteran$time, veteran$status)
# Turbine wheels with and without a crack at the hours at which they were inspected.
fits("turbine", c(rep(0, nrow(turbine)), turbine$hours), c(turbine$hours, rep(Inf, nrow(turbine))),
  c(turbine$failed, turbine$inspected - turbine$failed))
# Parts found cracked at one of twelve inspections.
ends <- c(0, cracks$days, Inf)
found <- c(cracks$fail, 167 - sum(cracks$fail))
fits("cracks", ends[seq_along(found)], ends[seq_along(found) + 1], found)
# With inspections common to all the shares are those of a multinomial distribution.
alive <- 1 - cumsum(cracks$fail) / 167
show("cracks without a distribution", survival = alive, se = sqrt(alive * (1 - alive) / 167))

# Weibull with late entry: the likelihood written out, since survreg does not take entries.
late <- function(case, entry, stop, event) {
  minus <- function(p) {
    shape <- exp(-p[2])
    -sum(event * (log(shape) - log(stop) + shape * (log(stop) - p[1])) - exp(shape * (log(stop) - p[1])) +
      exp(shape * (log(entry) - p[1])))
  }
  start <- c(log(sum(stop - entry) / sum(event)), 0)
  for (round in 1:3) {
    f <- nlm(minus, start, gradtol = 1e-13, steptol = 1e-14, iterlim = 2000)
    start <- f$estimate
  }
  show(case, entry = entry, age = stop, event = event, mu = f$estimate[1], sigma = exp(f$estimate[2]),
    log_likelihood = -f$minimum)
}
late("heart lives", heart$start, heart$stop, heart$event)

# ---- mean cumulative functions ---------------------------------------------------------------------------------------
means <- function(case, id, start, stop, event) {
  keep <- stop > start
  d <- data.frame(id = as.integer(factor(id)), start, stop, event)[keep, ]
  f <- survfit(Surv(start, stop, event) ~ 1, d, id = id, cluster = id)
  s <- summary(f)
  at <- f$n.event > 0
  show(case, unit = d$id - 1, start = d$start, stop = d$stop, event = d$event,
    at = f$time[at], at_risk = f$n.risk[at], mean = f$cumhaz[at], se = f$std.chaz[at])
}
means("bladder2", bladder2$id, bladder2$start, bladder2$stop, bladder2$event)
means("cgd", cgd$id, cgd$tstart, cgd$tstop, cgd$status)

# ---- straight lines --------------------------------------------------------------------------------------------------
lines_of <- function(case, x, y, at, weights = NULL) {
  fit <- if (is.null(weights)) lm(y ~ x) else lm(y ~ x, weights = weights)
  origin <- if (is.null(weights)) lm(y ~ 0 + x) else lm(y ~ 0 + x, weights = weights)
  new <- data.frame(x = at)
  s <- summary(fit)
  show(case, x = x, y = y, weights = if (is.null(weights)) rep(1, length(x)) else weights, at = at,
    coefficients = coef(fit), errors = s$coefficients[, 2], slope_p = s$coefficients[2, 4], s = s$sigma,
    r_squared = s$r.squared, slope_limits = confint(fit)[2, ],
    confidence = predict(fit, new, interval = "confidence"),
    prediction = suppressWarnings(predict(fit, new, interval = "prediction", level = 0.9)),
    origin = c(coef(origin), summary(origin)$coefficients[2], summary(origin)$sigma, summary(origin)$r.squared))
}
lines_of("cars", cars$speed, cars$dist, c(0, 15, 40))
lines_of("faithful", faithful$eruptions, faithful$waiting, c(1, 3, 6))
lines_of("women", women$height, women$weight, c(50, 65, 80))
lines_of("mtcars weighted", mtcars$wt, mtcars$mpg, c(1, 3, 6), mtcars$cyl)

# ---- ranks -----------------------------------------------------------------------------------------------------------
ranks <- function(case, x, y) {
  n <- length(x)
  test <- suppressWarnings(cor.test(x, y, method = "kendall", exact = FALSE, continuity = TRUE))
  exact <- if (n <= 10) cor.test(x, y, method = "kendall", exact = TRUE)$p.value else NA
  pick <- which(upper.tri(diag(n)), arr.ind = TRUE)
  dx <- x[pick[, 2]] - x[pick[, 1]]
  slopes <- ((y[pick[, 2]] - y[pick[, 1]]) / dx)[dx != 0]
  show(case, x = x, y = y, tau_b = test$estimate, z = test$statistic, p = test$p.value, exact_p = exact,
    score = sum(sign(dx) * sign(y[pick[, 2]] - y[pick[, 1]])), pairs = length(slopes), slope = median(slopes),
    intercept = median(y) - median(slopes) * median(x))
}
ranks("Nile", as.numeric(time(Nile)), as.numeric(Nile))
ranks("cars ranks", cars$speed, cars$dist)
complete <- airquality[complete.cases(airquality), ]
ranks("airquality", complete$Temp, complete$Ozone)
ranks("LakeHuron", as.numeric(time(LakeHuron)), as.numeric(LakeHuron))
ranks("first rivers", 1:9, rivers[1:9])

# ---- shares and counts -----------------------------------------------------------------------------------------------
admitted <- UCBAdmissions["Admitted", , ]
applied <- admitted + UCBAdmissions["Rejected", , ]
show("UCBAdmissions", successes = admitted, trials = applied,
  wilson = t(mapply(function(x, n) prop.test(x, n, correct = FALSE)$conf.int, admitted, applied)),
  exact = t(mapply(function(x, n) binom.test(x, n, conf.level = 0.9)$conf.int, admitted, applied)))
minus <- function(logs) {
  a <- exp(logs[1])
  b <- exp(logs[2])
  -sum(lbeta(a + admitted, b + applied - admitted) - lbeta(a, b))
}
start <- log(c(2, 3))
for (round in 1:3) {
  f <- nlm(minus, start, gradtol = 1e-13, steptol = 1e-14, iterlim = 2000)
  start <- f$estimate
}
show("UCBAdmissions shrunk", prior = exp(f$estimate), log_likelihood = -f$minimum)
counts <- as.numeric(discoveries)
show("discoveries", counts = counts, centre = mean(counts), limits = mean(counts) + c(-3, 3) * sqrt(mean(counts)))
against <- function(observed, expected) c(observed / expected, poisson.test(observed, expected)$conf.int)
show("poisson", observed = c(0, 1, 7, 42), expected = c(2.5, 0.4, 11, 40),
  ratio = t(mapply(against, c(0, 1, 7, 42), c(2.5, 0.4, 11, 40))))
show("faithful quantiles", values = faithful$waiting, probability = c(0, 0.1, 0.25, 0.5, 0.9, 1),
  quantile = quantile(faithful$waiting, c(0, 0.1, 0.25, 0.5, 0.9, 1)), variance = var(faithful$waiting))

# ---- two-way analysis of variance ------------------------------------------------------------------------------------
table_of <- anova(aov(breaks ~ tension * wool, warpbreaks))
show("warpbreaks", object = as.integer(warpbreaks$tension), appraiser = as.integer(warpbreaks$wool),
  value = warpbreaks$breaks, squares = table_of[["Sum Sq"]], freedom = table_of[["Df"]],
  interaction = c(table_of[3, "F value"], table_of[3, "Pr(>F)"]))
