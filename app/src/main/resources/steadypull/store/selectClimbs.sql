select id, name, line, length_metres, rise_metres from climb order by climb_key
