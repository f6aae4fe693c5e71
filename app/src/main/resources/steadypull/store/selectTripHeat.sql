select start_epoch_micros, told
from (
  select start_epoch_micros, told, heat_key
  from trip_heat
  where vehicle_name = :name and told <> ''
  order by start_epoch_micros desc, heat_key desc
  limit :most
)
order by start_epoch_micros, heat_key
