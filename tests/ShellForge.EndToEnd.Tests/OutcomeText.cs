using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// Everything that a plan decides, as text, without where in the board file a value stood: two wishes that end alike give equal texts.
/// </summary>
internal static class OutcomeText
{
    /// <summary>The text of a plan.</summary>
    public static string Of(HousingPlan plan)
    {
        var text = new StringBuilder();
        foreach (PropertyInfo property in Properties(typeof(HousingPlan)).Where(property => property.PropertyType != typeof(BoardFile)))
        {
            Write(text, property.GetValue(plan), 0);
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, object? value, int depth)
    {
        // Deeper than the plan nests there are only profiles, which name themselves.
        const int deepest = 12;
        switch (value)
        {
            case null or BoardFile:
                text.Append('-');
                break;
            case Decision told when told.Path.StartsWith("print.measured.", StringComparison.Ordinal)
                || told.Path.StartsWith("board.", StringComparison.Ordinal)
                || told.Path.StartsWith("housing.measured", StringComparison.Ordinal):
                // Only repeats what the file and the profiles say: no outcome.
                break;
            case Decision decision:
                text.Append(decision.Path).Append('=').Append(decision.Value).Append(';');
                break;
            case Region region:
                foreach (Point2 point in region.Loops.SelectMany(loop => loop))
                {
                    text.Append(CultureInfo.InvariantCulture, $"{point.X:R},{point.Y:R} ");
                }

                break;
            case string or bool or int or double or Enum or Point2 or Point3 or Angle:
                text.Append(CultureInfo.InvariantCulture, $"{value};");
                break;
            case IEnumerable many:
                foreach (object? one in many)
                {
                    Write(text, one, depth + 1);
                }

                break;
            default:
                text.Append(value.GetType().Name).Append('{');
                foreach (PropertyInfo property in depth > deepest ? [] : Properties(value.GetType()))
                {
                    Write(text, property.GetValue(value), depth + 1);
                }

                text.Append('}');
                break;
        }
    }

    private static IEnumerable<PropertyInfo> Properties(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetIndexParameters().Length == 0 && property.Name is not "EqualityContract")
            .OrderBy(property => property.Name, StringComparer.Ordinal);
}
