select count(*)
from trip
where sealed = 1 and removed = 0 and origin not in (select origin from trip_heat)
