select count(*), coalesce(sum(sample_count), 0) from trip where removed = 0
