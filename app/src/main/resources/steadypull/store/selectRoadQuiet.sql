select latitude_degrees, longitude_degrees, radius_metres from road_quiet order by quiet_key
