# The other side of against-r.ts: the same data, the same question, answered by R. Prints the processor
# seconds of each repetition and the figures that the two sides must agree on. Start of R and reading of the data are not in the time.
#
# Run: Rscript against-r.R <folder> <case> <repetitions>

suppressMessages(library(survival))
options(digits = 15)
arguments <- commandArgs(trailingOnly = TRUE)
column <- function(name) {
  path <- file.path(arguments[1], paste0(name, ".f64"))
  readBin(path, "double", n = file.size(path) / 8)
}
last <- function(values) values[length(values)]

cases <- list(
  # survfit of package survival, with Greenwood's errors and log-log limits.
  kaplanMeier = function() {
    y <- Surv(column("age"), column("event"))
    list(
      compute = function() survfit(y ~ 1, conf.type = "log-log"),
      figures = function(fit) {
        at <- summary(fit, times = 100000)
        c(at$surv, at$std.err, at$lower, at$upper)
      }
    )
  },
  # Package survival keeps the influence of every unit at every age for the robust variance, which ends with its memory at
  # this size. So the same running sums as on the other side, written for vectors: R's order, cumsum and findInterval.
  meanCumulativeFunction = function() {
    end <- column("spanEnd")
    unit <- column("eventUnit") + 1
    age <- column("eventAge")
    list(
      compute = function() {
        units <- length(end)
        ends <- sort(end)
        times <- sort(unique(age))
        count <- tabulate(match(age, times), length(times))
        at_risk <- units - findInterval(times, ends, left.open = TRUE)
        mean <- cumsum(count / at_risk)
        common <- cumsum(count / at_risk^2)
        # b of a unit: the sum of 1 / at risk over its own events; a unit at risk stands at b - common.
        by_unit <- order(unit, age)
        place <- match(age[by_unit], times)
        own <- 1 / at_risk[place]
        total <- cumsum(own)
        first <- !duplicated(unit[by_unit])
        before <- (total - own)[first]
        b <- total - rep(before, diff(c(which(first), length(total) + 1)))
        steps <- rowsum(c(own, b^2 - (b - own)^2), c(place, place + length(times)))
        sum_b <- cumsum(steps[seq_along(times)])
        sum_b2 <- cumsum(steps[length(times) + seq_along(times)])
        # What units take along when they leave.
        final <- numeric(units)
        final[unit[by_unit][first]] <- b[c(which(first)[-1] - 1, length(b))]
        leaving <- order(end)
        gone <- findInterval(times, ends, left.open = TRUE)
        left <- final[leaving]
        known <- findInterval(ends, times)
        rest <- (left - c(0, common)[known + 1])^2
        lost <- function(values) c(0, cumsum(values))[gone + 1]
        variance <- lost(rest) + (sum_b2 - lost(left^2)) - 2 * common * (sum_b - lost(left)) + at_risk * common^2
        se <- sqrt(pmax(0, variance))
        reach <- qnorm(0.975) * se / mean
        list(times = times, at_risk = at_risk, mean = mean, se = se, lower = mean * exp(-reach), upper = mean * exp(reach))
      },
      figures = function(curve) {
        at <- findInterval(100000, curve$times)
        c(curve$mean[at], curve$se[at], curve$lower[at], curve$upper[at])
      }
    )
  },
  # survreg of package survival, with its usual end of the search (relative 1e-9).
  intervalCensoredWeibull = function() {
    lower <- column("lower")
    upper <- column("upper")
    y <- Surv(ifelse(lower == 0, NA, lower), ifelse(upper == Inf, NA, upper), type = "interval2")
    list(
      compute = function() survreg(y ~ 1, dist = "weibull"),
      figures = function(fit) c(1 / fit$scale, exp(coef(fit)), sqrt(diag(vcov(fit))))
    )
  },
  # All slopes row by row into one vector, then the six ranks by partial sorting.
  theilSen = function() {
    x <- column("x")
    y <- column("y")
    list(
      compute = function() {
        n <- length(x)
        o <- order(x)
        x <- x[o]
        y <- y[o]
        slopes <- numeric(n * (n - 1) / 2)
        to <- 0
        for (i in seq_len(n - 1)) {
          later <- (i + 1):n
          slopes[to + seq_along(later)] <- (y[later] - y[i]) / (x[later] - x[i])
          to <- to + length(later)
        }
        pairs <- length(slopes)
        half <- qnorm(0.975) * sqrt(n * (n - 1) * (2 * n + 5) / 18)
        ranks <- c((pairs + 1) / 2, (pairs - half) / 2, (pairs + half) / 2 + 1)
        wanted <- sort(unique(c(floor(ranks), ceiling(ranks))))
        slopes <- sort(slopes, partial = wanted)
        below <- slopes[floor(ranks)]
        found <- below + (ranks - floor(ranks)) * (slopes[ceiling(ranks)] - below)
        c(found, median(y) - found[1] * median(x))
      },
      figures = identity
    )
  },
  # One part after the other, as parts come in: .lm.fit, the barest fit that R has, and Fieller's limits of the distance at
  # which the line reaches 1.5, in a loop that R compiles.
  wearLines = function() {
    km <- matrix(column("km"), nrow = 8)
    value <- matrix(column("value"), nrow = 8)
    t <- qt(0.95, 6)
    list(
      compute = function() {
        parts <- ncol(km)
        answer <- matrix(0, 3, parts)
        for (part in seq_len(parts)) {
          x <- km[, part]
          y <- value[, part]
          fit <- .lm.fit(cbind(1, x), y)
          slope <- fit$coefficients[2]
          s2 <- sum(fit$residuals^2) / 6
          centre <- mean(x)
          sxx <- sum((x - centre)^2)
          g <- t^2 * s2 / (slope^2 * sxx)
          step <- (1.5 - mean(y)) / slope
          half <- if (g < 1) t * sqrt(s2) / abs(slope) * sqrt(step^2 / sxx + (1 - g) * (1 / 8)) else NaN
          answer[, part] <- centre + c(step, (step - half) / (1 - g), (step + half) / (1 - g))
        }
        answer
      },
      figures = function(answer) c(median(answer[1, ]), median(answer[2, ], na.rm = TRUE), median(answer[3, ], na.rm = TRUE), sum(is.nan(answer[2, ])))
    )
  },
  # The same for all parts at once, which R does best and which asks for all readings at hand.
  wearLinesAtOnce = function() {
    km <- matrix(column("km"), nrow = 8)
    value <- matrix(column("value"), nrow = 8)
    t <- qt(0.95, 6)
    list(
      compute = function() {
        centre <- colMeans(km)
        height <- colMeans(value)
        dx <- km - rep(centre, each = 8)
        dy <- value - rep(height, each = 8)
        sxx <- colSums(dx^2)
        slope <- colSums(dx * dy) / sxx
        s2 <- colSums((dy - dx * rep(slope, each = 8))^2) / 6
        g <- t^2 * s2 / (slope^2 * sxx)
        step <- (1.5 - height) / slope
        half <- t * sqrt(s2) / abs(slope) * sqrt(step^2 / sxx + pmax(0, 1 - g) / 8)
        half[g >= 1] <- NaN
        rbind(centre + step, centre + (step - half) / (1 - g), centre + (step + half) / (1 - g))
      },
      figures = function(answer) c(median(answer[1, ]), median(answer[2, ], na.rm = TRUE), median(answer[3, ], na.rm = TRUE), sum(is.nan(answer[2, ])))
    )
  }
)

run <- cases[[arguments[2]]]()
seconds <- numeric(0)
for (repetition in seq_len(as.integer(arguments[3]))) {
  invisible(gc())
  spent <- system.time(answer <- run$compute(), gcFirst = FALSE)
  seconds <- c(seconds, spent[["user.self"]] + spent[["sys.self"]])
}
cat("seconds", format(seconds), "\n")
cat("figures", format(run$figures(answer), digits = 15), "\n")
