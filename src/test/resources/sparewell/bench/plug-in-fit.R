# The plug-in counterpart in R of reading a workbook, fitting loss rates and writing a sheet of them:
# negative binomial counts, random intercepts for families and styles, covers fixed, hyperparameters at
# their peak (lme4::glmer.nb, nAGQ = 0). No forecasts, no track record, no stowing.
# Usage: Rscript plug-in-fit.R WORKBOOK OUT
suppressPackageStartupMessages({
  library(readxl)
  library(lme4)
  library(openxlsx)
})
paths <- commandArgs(trailingOnly = TRUE)
styles <- read_excel(paths[1], "Styles")
trips <- read_excel(paths[1], "Trips")
hours <- read_excel(paths[1], "Style hours")
losses <- read_excel(paths[1], "Losses")
lost <- aggregate(Lost ~ Trip + Style, losses, sum)
log <- merge(hours, lost, all.x = TRUE)
log$Lost[is.na(log$Lost)] <- 0
log <- merge(merge(log, trips[c("Trip", "Cover")]), styles[c("Style", "Family")])
fit <- suppressMessages(suppressWarnings(glmer.nb(
  Lost ~ Cover + offset(log(Hours)) + (1 | Family) + (1 | Style), log, nAGQ = 0)))
rate <- 10 * exp(fixef(fit)[1] + ranef(fit)$Style[[1]])
book <- createWorkbook()
addWorksheet(book, "Rates")
writeData(book, "Rates", data.frame(Style = rownames(ranef(fit)$Style), Per10Hours = rate))
saveWorkbook(book, paths[2], overwrite = TRUE)
