# The columns of a million panels without uncertainty, in R, on one thread. All values are invented.
rows <- 1e6
set.seed(1)
curves <- list(igg = c(0.93, 6e-6, 1.7e-3), iga = c(0.77, 23e-6, 3.1e-3),
               igm = c(0.67, 120e-6, 7.1e-3), kappa = c(3.27, 33e-6, 8.2e-3))
names <- c("albumin", names(curves))
csf <- lapply(setNames(names, names), function(n) 40 * exp(rnorm(rows) / 2))
serum <- lapply(setNames(names, names), function(n) 1e4 * exp(rnorm(rows) / 2))
interpret <- function() {
  albumin <- csf$albumin / serum$albumin
  out <- list(albumin)
  for (protein in names(curves)) {
    k <- curves[[protein]]
    quotient <- csf[[protein]] / serum[[protein]]
    limit <- k[1] * sqrt(albumin * albumin + k[2]) - k[3]
    fraction <- pmax(0, 1 - limit / quotient)
    local <- pmax(0, csf[[protein]] - limit * serum[[protein]])
    out <- c(out, list(quotient, limit, fraction, local, quotient / albumin))
  }
  leaked <- 1 / 369 - 0.43 / 230 + 0.43 * albumin
  c(out, list(0.5 * (csf$igg - serum$igg * leaked)))
}
fastest <- min(sapply(1:10, function(i) system.time(interpret())[["elapsed"]]))
cat(sprintf("R %s columns: %.0f panels/s\n", getRversion(), rows / fastest))
