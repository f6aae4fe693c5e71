select quiet_key from road_quiet order by quiet_key limit 1 offset :before
