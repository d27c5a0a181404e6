using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Fit;

/// <summary>Two plastics printed into each other that do not bond.</summary>
public sealed class PlasticsDoNotFuse() : Rule(
    "plastics-do-not-fuse",
    "Parts that are printed into each other must be of one plastic family.",
    "PETG and PLA peel apart by hand: the diffuser drops out of its cover.",
    "filament family of a part against that of the part it is printed with",
    "families of the filament profiles; trade knowledge")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (CheckedPart part in housing.Parts.Where(part => part.Plan.PrintedWith is not null))
        {
            CheckedPart other = housing.Parts.First(each => each.Name == part.Plan.PrintedWith);
            if (other.Plan.Filament.Family != part.Plan.Filament.Family)
            {
                yield return new Finding
                {
                    Rule = Name,
                    Severity = Severity.Stop,
                    Subject = part.Name,
                    Message = $"{part.Plan.Filament.Name} does not bond to the {other.Name}'s {other.Plan.Filament.Name}",
                    At = new Point3(0, 0, housing.Plan.Stack.DiffuserInner),
                    Remedy = "take two filaments of one family, or a diffuser as a part of its own",
                };
            }
        }
    }
}
