-- Of whatever is said: at most so many findings, or those of one table.
pragma integrity_check(<what>)
