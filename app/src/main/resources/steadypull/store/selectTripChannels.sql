select trip_channel.trip_key, trip_channel.channel_key
from trip_channel
join trip on trip.trip_key = trip_channel.trip_key
where substr(trip.id, 1, length(:prefix)) = :prefix
order by trip_channel.trip_key, trip_channel.position
