pragma quick_check(1)
