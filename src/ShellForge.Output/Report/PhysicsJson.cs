using System.Text.Json;
using ShellForge.Checks;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Light;
using ShellForge.Physics.Heat;
using ShellForge.Physics.Power;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Report;

/// <summary>Light, heat and power as a part of the report: lengths in mm, temperatures in degrees Celsius, shares from 0 to 1.</summary>
internal static class PhysicsJson
{
    private const string OpticsBasis = "optics of printed plastic are typical and spread by two between spools: print a coupon";

    /// <summary>The property <c>physics</c> of the object being written.</summary>
    public static void Write(Utf8JsonWriter json, HousingUnderCheck housing)
    {
        json.WriteStartObject("physics");
        if (housing.Light is { } light)
        {
            WriteLight(json, light, housing.Board.Housing.Light.MinimumOverMean);
        }
        else
        {
            json.WriteNull("light");
        }

        WriteHeat(json, housing.Heat, housing.Board.Power.Brightness);
        WritePower(json, housing.Power, housing.Board.Power.Brightness);
        json.WriteStartArray("cautions");
        foreach (HandCaution caution in Cautions.All(housing))
        {
            json.WriteStringValue($"{caution.Risk}: {caution.Text}");
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteLight(Utf8JsonWriter json, HousingLight light, double wanted)
    {
        json.WriteStartObject("light");
        json.WriteString("picture", LightPictures.FileName);
        json.WriteString("basis", OpticsBasis);
        Number(json, "window_mm2", light.Map.Face.OpenArea);
        Number(json, "minimum_over_mean_asked", wanted);
        if (light.MinimumOverMean is double even)
        {
            Number(json, "minimum_over_mean", even);
        }
        else
        {
            json.WriteNull("minimum_over_mean");
        }

        json.WriteStartArray("circles");
        foreach (CircleLight circle in light.Circles)
        {
            json.WriteStartObject();
            Number(json, "diameter_mm", circle.Circle.Diameter);
            json.WriteNumber("leds", circle.Circle.Pixels.Length);
            Number(json, "along_minimum_over_mean", circle.Along.MinimumOverMean);
            Number(json, "along_michelson", circle.Along.Michelson);
            Number(json, "across_minimum_over_mean", circle.Across.MinimumOverMean);
            Number(json, "across_michelson", circle.Across.Michelson);
            Place(json, "dimmest_at", circle.Least);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Number(json, "crosstalk", light.Crosstalk);
        Number(json, "through_cell_wall", light.ThroughCellWall);
        Number(json, "transmission", light.Map.Diffuser.Transmission);
        Number(json, "direct_share", light.Map.DirectShare);
        Number(json, "reflected_share", light.Map.ReflectedShare);
        Number(json, "seen_share", light.Map.SeenShare);
        Number(json, "seam_leak_share", light.Leaks.SeamShare);
        Number(json, "wall_glow", light.Leaks.WallGlow);
        Place(json, "wall_glow_at", light.Leaks.WallAt);
        json.WriteEndObject();
    }

    private static void WriteHeat(Utf8JsonWriter json, HousingHeat heat, double brightness)
    {
        json.WriteStartObject("heat");
        Number(json, "ambient_celsius", heat.Input.AmbientCelsius);
        Number(json, "brightness", brightness);
        Number(json, "heat_watts", heat.Planned.HeatWatts);
        json.WriteStartArray("nodes");
        foreach (NodeTemperature node in heat.Planned.Nodes)
        {
            json.WriteStartObject();
            WriteNode(json, node);
            Tenth(json, "full_white_celsius", heat.FullWhite[node.Body].Celsius);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("weakest_filament", heat.WeakestFilament);
        Number(json, "plastic_limit_celsius", heat.PlasticLimitCelsius);
        json.WriteString("warmest_plastic", heat.Planned.WarmestPlastic.Body.InWords());
        Tenth(json, "margin_kelvin", heat.PlasticLimitCelsius - heat.Planned.WarmestPlastic.Celsius);
        Number(json, "largest_brightness", heat.LargestBrightness);
        Number(json, "minutes_to_90_percent", heat.Planned.MinutesToNinetyPercent);
        WriteWarmUp(json, heat.Planned);
        if (heat is { CoolestCelsius: { } coolest, PlannedCoolest: { } cool })
        {
            json.WriteStartObject("coolest");
            Number(json, "ambient_celsius", coolest);
            json.WriteStartArray("nodes");
            foreach (NodeTemperature node in cool.Nodes)
            {
                json.WriteStartObject();
                WriteNode(json, node);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            Number(json, "minutes_to_90_percent", cool.MinutesToNinetyPercent);
            WriteWarmUp(json, cool);
            json.WriteEndObject();
        }

        json.WriteString("coefficients_from", heat.Profile);
        json.WriteStartArray("coefficients");
        foreach ((string name, Coefficient coefficient) in heat.Coefficients.All)
        {
            json.WriteStartObject();
            json.WriteString("name", name);
            Number(json, "value", coefficient.Value);
            Number(json, "low", coefficient.Low);
            Number(json, "high", coefficient.High);
            json.WriteString("source", coefficient.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The warmest place of a body, and its range by dies and coefficients.
    private static void WriteNode(Utf8JsonWriter json, NodeTemperature node)
    {
        json.WriteString("name", node.Body.InWords());
        Tenth(json, "celsius", node.Celsius);
        Tenth(json, "low_celsius", node.Low);
        Tenth(json, "high_celsius", node.High);
        Tenth(json, "mean_celsius", node.Mean);
    }

    private static void WriteWarmUp(Utf8JsonWriter json, HeatResult heat)
    {
        json.WriteStartArray("warm_up");
        foreach (WarmUpPoint point in heat.WarmUp)
        {
            json.WriteStartObject();
            Number(json, "minutes", point.Minutes);
            Tenth(json, "air_celsius", point.AirCelsius);
            Tenth(json, "board_celsius", point.BoardCelsius);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePower(Utf8JsonWriter json, BoardPower power, double brightness)
    {
        PowerResult result = power.Result;
        json.WriteStartObject("power");
        Number(json, "full_white_typical_leds_amps", result.FullWhiteAmps);
        Number(json, "full_white_worst_leds_amps", result.StrongestAmps);
        Number(json, "planned_typical_leds_amps", result.PlannedAmps);
        Number(json, "planned_worst_leds_amps", result.PlannedStrongestAmps);
        Number(json, "mean_typical_leds_amps", result.MeanAmps);
        Number(json, "idle_amps", result.IdleAmps);
        Number(json, "supply_amps", power.Input.SupplyAmps);
        Number(json, "limit_amps", result.AllowedAmps);
        Number(json, "contact_amps", power.Input.ContactAmps);
        Number(json, "allowed_brightness", result.AllowedBrightness);
        json.WriteNumber("firmware_cap", PowerModel.FirmwareCap(brightness));
        json.WriteNumber("firmware_cap_most_for_supply", PowerModel.FirmwareCap(result.AllowedBrightness));
        json.WriteNumber("feeds", power.Input.Feeds);
        json.WriteNumber("feeds_needed", result.FeedsNeeded);
        Number(json, "ring_drop_volts", result.RingDropVolts);
        Number(json, "full_white_ring_drop_volts", result.FullRingDropVolts);
        json.WriteStartArray("leads");
        foreach (LeadPower lead in power.Leads)
        {
            json.WriteStartObject();
            json.WriteString("name", lead.Wire.Name);
            Number(json, "amps", lead.Amps);
            Number(json, "metres", lead.Metres);
            if (lead.Thinnest is { } wire)
            {
                json.WriteNumber("thinnest_gauge", wire.Gauge);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Place(Utf8JsonWriter json, string name, Point3? at)
    {
        if (at is not { } place)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartArray(name);
        json.WriteNumberValue(Rounded(place.X, 3));
        json.WriteNumberValue(Rounded(place.Y, 3));
        json.WriteNumberValue(Rounded(place.Z, 3));
        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string name, double value) => Written(json, name, value, 3);

    // More digits of a temperature would promise what no coefficient holds.
    private static void Tenth(Utf8JsonWriter json, string name, double value) => Written(json, name, value, 1);

    private static void Written(Utf8JsonWriter json, string name, double value, int digits)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(name, Rounded(value, digits));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static double Rounded(double value, int digits) => Math.Round(value, digits) + 0;
}
