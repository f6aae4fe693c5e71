delete from trip where removed = 2
