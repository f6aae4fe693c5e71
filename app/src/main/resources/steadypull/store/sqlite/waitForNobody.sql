pragma busy_timeout = 0
