# Values that the specs of life data and recurrences compare with. Made with R 4.2.2 and survival 3.5-3; no chance is
# involved. The data are those of the TypeScript files beside this one, written out again as CSV in the folder named by
# the first argument: genfan.csv (hours, status), nist_weibull.csv (time, status, count), nist_repairs.csv (time),
# milhdbk189.csv (time), valveseat.csv (id, time, status), and, where at hand, lzbearing.csv (megacycles),
# heatexchanger.csv (lower, upper, event, count), locomotivecontrol.csv (kilomiles, event, count), grampus.csv
# (kilohours, event).
#
# Run: Rscript generate.R <folder>; ../r/write-values.ts writes the tables from the TypeScript data, runs this and keeps what it
# prints in values.txt with the versions; ../r/generators.spec.ts runs it again wherever R is at hand.

suppressMessages(library(survival))
options(digits = 12, width = 160)
folder <- commandArgs(trailingOnly = TRUE)[1]
has <- function(name) file.exists(file.path(folder, paste0(name, ".csv")))
table_of <- function(name) read.csv(file.path(folder, paste0(name, ".csv")), stringsAsFactors = FALSE)
show <- function(case, values) {
  for (name in names(values)) cat(case, "|", name, "|", format(values[[name]], digits = 12, trim = TRUE), "\n")
}
strict <- survreg.control(rel.tolerance = 1e-14, iter.max = 200)

# Weibull fit: shape, scale, their limits on the log scale, and the life t_p by the delta method.
weibull_values <- function(fit, p = 0.1, level = 0.95) {
  z <- qnorm(0.5 + level / 2)
  mu <- unname(coef(fit))
  sigma <- fit$scale
  v <- vcov(fit)
  q <- log(-log(1 - p))
  gradient <- c(1, sigma * q)
  se <- sqrt(drop(t(gradient) %*% v %*% gradient))
  log_tp <- mu + sigma * q
  list(
    beta = 1 / sigma, eta = exp(mu), log_likelihood = fit$loglik[1],
    beta_limits = exp(-log(sigma) + c(-1, 1) * z * sqrt(v[2, 2])),
    eta_limits = exp(mu + c(-1, 1) * z * sqrt(v[1, 1])),
    t_p = exp(log_tp), t_p_limits = exp(log_tp + c(-1, 1) * z * se),
    mean = exp(mu) * gamma(1 + sigma),
    sd = exp(mu) * sqrt(gamma(1 + 2 * sigma) - gamma(1 + sigma)^2),
    akaike = 4 - 2 * fit$loglik[1]
  )
}

# Product-limit tables in the three forms of limits.
curve_table <- function(formula, data, weights, form) {
  data$units <- weights
  s <- summary(survfit(formula, data, weights = units, conf.type = form))
  print(data.frame(s$time, s$n.risk, s$n.event, s$surv, s$std.err, s$lower, s$upper), digits = 8, row.names = FALSE)
}

for (first in c(54, 55)) {
  d <- table_of("nist_weibull")
  d$time[1] <- first
  y <- Surv(d$time, d$status)
  show(paste("nist_weibull", first), weibull_values(survreg(y ~ 1, weights = d$count, dist = "weibull", control = strict)))
  other <- survreg(y ~ 1, weights = d$count, dist = "lognormal", control = strict)
  show(paste("nist_weibull lognormal", first), list(akaike = 4 - 2 * other$loglik[1]))
}
d <- table_of("nist_weibull")
d$time[1] <- 54
for (form in c("log", "log-log", "plain")) curve_table(Surv(time, status) ~ 1, d, d$count, form)

d <- table_of("genfan")
fan <- survreg(Surv(hours, status) ~ 1, d, dist = "weibull", control = strict)
w <- weibull_values(fan)
show("genfan", w)
show("genfan t_0.01", weibull_values(fan, 0.01))
show("genfan F(8000)", list(value = 1 - exp(-(8000 / w$eta)^w$beta)))
constant <- survreg(Surv(hours, status) ~ 1, d, dist = "exponential")
show("genfan exponential", list(mean = exp(coef(constant)), log_likelihood = constant$loglik[1]))
curve_table(Surv(hours, status) ~ 1, d, rep(1, nrow(d)), "log-log")

# Profile limits: the likelihood written out, its maximum over the other parameter, and the two crossings.
log_likelihood <- function(beta, eta) {
  sum(d$status * (log(beta / eta) + (beta - 1) * log(d$hours / eta)) - (d$hours / eta)^beta)
}
drop <- qchisq(0.95, 1) / 2 - w$log_likelihood
by_shape <- function(beta) log_likelihood(beta, (sum(d$hours^beta) / sum(d$status))^(1 / beta)) + drop
by_life <- function(log_life) {
  along <- function(beta) log_likelihood(beta, exp(log_life) / (-log(0.9))^(1 / beta))
  optimize(along, c(0.2, 4), maximum = TRUE, tol = 1e-12)$objective + drop
}
crossing <- function(f, a, b) uniroot(f, c(a, b), tol = 1e-12)$root
show("genfan profile shape", list(limits = c(crossing(by_shape, 0.3, w$beta), crossing(by_shape, w$beta, 3))))
centre <- log(w$t_p)
show("genfan profile B10", list(limits = exp(c(crossing(by_life, centre - 2, centre), crossing(by_life, centre, centre + 4)))))

if (has("lzbearing")) {
  d <- table_of("lzbearing")
  y <- Surv(d$megacycles, rep(1, nrow(d)))
  show("lzbearing", weibull_values(survreg(y ~ 1, dist = "weibull", control = strict)))
}
if (has("heatexchanger")) {
  d <- table_of("heatexchanger")
  y <- Surv(ifelse(d$event == "Left", NA, d$lower), ifelse(d$event == "Right", NA, d$upper), type = "interval2")
  show("heatexchanger", weibull_values(survreg(y ~ 1, weights = d$count, dist = "weibull", control = strict)))
  print(summary(survfit(y ~ 1, weights = d$count)), digits = 8)
}
if (has("locomotivecontrol")) {
  d <- table_of("locomotivecontrol")
  y <- Surv(d$kilomiles, d$event == "Failed")
  show("locomotivecontrol", weibull_values(survreg(y ~ 1, weights = d$count, dist = "weibull", control = strict)))
  other <- survreg(y ~ 1, weights = d$count, dist = "lognormal", control = strict)
  show("locomotivecontrol lognormal", list(
    mu = coef(other), sigma = other$scale, se_mu = sqrt(vcov(other)[1, 1]), log_likelihood = other$loglik[1],
    f80 = pnorm((log(80) - coef(other)) / other$scale)
  ))
}

# Power-law process of one system observed up to a fixed end, with the tests for a trend.
power_law <- function(t, end, level) {
  n <- length(t)
  logs <- sum(log(end / t))
  shape <- n / logs
  unbiased <- (n - 1) / logs
  tail <- (1 - level) / 2
  chi <- 2 * logs
  laplace <- (sum(t) - n * end / 2) / (end * sqrt(n / 12))
  list(
    shape = shape, rate = n / end^shape, unbiased_shape = unbiased, unbiased_rate = n / end^unbiased,
    intensity = n * shape / end, mean_time = end / (n * shape),
    shape_limits = qchisq(c(tail, 1 - tail), 2 * n) / (2 * logs),
    cramer_von_mises = 1 / (12 * n) + sum(((sort(t) / end)^unbiased - (2 * seq_len(n) - 1) / (2 * n))^2),
    chi_square = chi, lower_tail = pchisq(chi, 2 * n), upper_tail = pchisq(chi, 2 * n, lower.tail = FALSE),
    laplace = laplace, laplace_p = 2 * pnorm(-abs(laplace))
  )
}
t <- table_of("nist_repairs")$time
show("nist_repairs", power_law(t, 1500, 0.8))
n <- length(t)
z <- qnorm(0.9)
mean_time <- 1500 / (n * (n - 1) / sum(log(1500 / t)))
show("nist_repairs mean time", list(
  estimate = mean_time,
  lower = mean_time * n * (n - 1) / (n + z^2 / 4 + sqrt(n * z^2 / 2 + z^4 / 16))^2,
  upper = mean_time * n * (n - 1) / (n - z * sqrt(n / 2))^2
))
gaps <- diff(c(0, t))
reversals <- sum(sapply(1:(n - 1), function(i) sum(gaps[(i + 1):n] > gaps[i])))
show("nist_repairs reversals", list(
  count = reversals, z = (reversals - n * (n - 1) / 4 + 0.5) / sqrt((2 * n + 5) * (n - 1) * n / 72)
))
show("milhdbk189", power_law(table_of("milhdbk189")$time, 300, 0.9))
if (has("grampus")) {
  d <- table_of("grampus")
  t <- d$kilohours[d$event == "Repair"]
  show("grampus", power_law(t, 16, 0.95))
  score <- function(b) sum(t) + length(t) / b - length(t) * 16 / (1 - exp(-16 * b))
  slope <- uniroot(score, c(1e-3, 1), tol = 1e-14, extendInt = "yes")$root
  show("grampus log-linear", list(slope = slope, log_rate = log(length(t) * slope / (exp(16 * slope) - 1))))
}

# Mean cumulative function with the sum-of-squares variance, unit by unit.
d <- table_of("valveseat")
ends <- tapply(d$time, d$id, max)
events <- d[d$status == 1, ]
contribution <- ends * 0
mean_so_far <- 0
z <- qnorm(0.975)
for (age in sort(unique(events$time))) {
  at_risk <- ends >= age
  counts <- table(factor(events$id[events$time == age], levels = names(ends)))
  share <- sum(counts) / sum(at_risk)
  mean_so_far <- mean_so_far + share
  contribution[at_risk] <- contribution[at_risk] + (as.numeric(counts)[at_risk] - share) / sum(at_risk)
  se <- sqrt(sum(contribution^2))
  cat(format(c(
    age, sum(at_risk), sum(counts), mean_so_far, se^2, se,
    mean_so_far * exp(c(-1, 1) * z * se / mean_so_far), mean_so_far + c(-1, 1) * z * se
  ), digits = 8), "\n")
}
