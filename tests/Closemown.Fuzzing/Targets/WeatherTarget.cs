using Closemown.Weather;

namespace Closemown.Fuzzing;

/// <summary>Weather files of every layout, with what a person may say of them.</summary>
internal sealed class WeatherTarget() : FuzzTarget("weather")
{
    private static readonly string[] Files =
    [
        "USC00026481,20200101,TMAX,156,,,7,0700\nUSC00026481,20200101,TMIN,44,,,7,0700\nUSC00026481,20200101,PRCP,0,T,,7,0700\nUSC00026481,20200105,AWND,31,,,7,\n",
        "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\nUSC00026481,20200102,TMAX,999,,X,7,0700\n",
        "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n40.7,-74.0,27.0,-14400,America/New_York,GMT-4\n\ntime,temperature_2m_max (°F),temperature_2m_min (°C),precipitation_sum (inch),wind_speed_10m_mean (km/h),sunshine_duration (s)\n2025-10-08,71.2,14.5,0.2,18.0,7200\n2025-10-09,59.2,8.5,NaN,NaN,0.0\n",
        """{"latitude":40.7,"longitude":-74.0,"elevation":27,"utc_offset_seconds":0,"daily_units":{"time":"iso8601","temperature_2m_max":"°C","precipitation_sum":"mm"},"daily":{"time":["2025-10-08","2025-10-09"],"temperature_2m_max":[21.5,null],"precipitation_sum":[0.0,2.5]}}""",
        """{"latitude":40.7,"longitude":-74.0,"hourly_units":{"time":"iso8601","temperature_2m":"°C","relative_humidity_2m":"%","precipitation":"mm"},"hourly":{"time":["2025-10-08T00:00","2025-10-08T01:00"],"temperature_2m":[11,12],"relative_humidity_2m":[80,81],"precipitation":[0,0.2]}}""",
        "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"PRCP\",\"TMAX\",\"TMIN\"\n\"X\",\"2020-01-01\",\"1\",\"2\",\"3\",\"N\",\"0.10\",\"60\",\"40\"\n",
        "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"SLP\",\"SLP_ATTRIBUTES\",\"STP\",\"STP_ATTRIBUTES\",\"VISIB\",\"VISIB_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MXSPD\",\"GUST\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"SNDP\",\"FRSHTT\"\n\"0\",\"2020-01-01\",\"1\",\"2\",\"3\",\"N\",\"  40.1\",\"24\",\"  30.0\",\"24\",\"9999.9\",\"0\",\"9\",\"0\",\" 9.9\",\"24\",\"  5.0\",\"24\",\" 9.9\",\"999.9\",\"  50.0\",\" \",\"  33.1\",\"*\",\" 0.05\",\"G\",\"999.9\",\"010000\"\n",
        "STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor\n 44;20200101;10;5.0;2.1;3;0.0;6;1.2;0;7.0;6.0;1020.0;2.5;90.0;4.5;-0.5;-2.0;eor\n",
        "date,tmin,tmax,rain\n2026-05-01,4,15,0\n2026-05-02,5,16,3.5\n",
        "Datum;Min (C);Max (C);Regen (mm)\n01.05.2026;4,5;15,0;0\n13.05.2026;5,0;16,0;3,5\n",
        "Conventions,G,BADC-CSV,1\ntitle,G,x\ndata\nob_end_time,id_type,id,ob_hour_count,met_domain_name,version_num,src_id,rec_st_ind,max_air_temp,min_air_temp\n2020-01-01 09:00:00,DCNN,1,24,NCM,1,2,1001,9.1,2.2\nend data\n",
    ];

    private static readonly WeatherFileOptions[] Told =
        [new(), new() { Dates = "dmy", Units = "metric" }, new() { Dates = "mdy", Units = "tenths", Place = 1 }, new() { Columns = new Dictionary<string, string> { ["date"] = "date", ["tMinC"] = "tmin:F", ["rainMm"] = "rain:in" }, Units = "standard" }];

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(Files);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(Files.SelectMany(f => f.Split('\n')).SelectMany(l => l.Split(',', ';')).Distinct().Concat([",", ";", "\t", "\"\"", "°F", "(inch)", "-9999", "9999.9", "\u001f\u008b", "PK"]));

    public override int Weight => 2;

    public override void Run(byte[] input)
    {
        foreach (var told in Told) Read(input, told);
    }

    private static void Read(byte[] input, WeatherFileOptions told)
    {
        try
        {
            var read = WeatherFile.Read(new MemoryStream(input), told);
            Laws.Must(read.Layout.Length > 0 && read.Source.Length > 0, "a file that is read has a layout and a source", read.Layout);
            foreach (var days in (WeatherTable[])[read.Days, read.Days.ReadInTheMorning()]) Table(days, read.Source);
        }
        catch (WeatherException fault)
        {
            Laws.Told(fault.Message, fault.Remedy);
        }
    }

    private static void Table(WeatherTable days, string source)
    {
        var count = 0;
        foreach (var entry in days.Entries("green", source, new DateOnly(2026, 5, 2), d => new(d.ToDateTime(new(12, 0)), TimeSpan.Zero)))
        {
            Laws.ReadBack(entry);
            count++;
        }
        Laws.Must(count == days.Count, "as many entries as days", $"{count} of {days.Count}");
        Laws.Must(days.Gaps().All(g => g.From <= g.To), "a gap has a day", source);
        Laws.Must(days.LeftOut.All(l => l.Field.Length > 0), "what is left out is named", source);
    }
}
