select gap.trip_key, gap.from_micros, gap.to_micros
from gap
join trip on trip.trip_key = gap.trip_key
where substr(trip.id, 1, length(:prefix)) = :prefix
order by gap.trip_key, gap.from_micros
