drop table sample;
drop table old_event;
drop table gap;
drop table trip_channel;
drop table old_trip;
