using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks;

/// <summary>A wish of the board file that the plan could not meet. Each finding carries the refusal's own rule name.</summary>
public sealed class PlanRefused : IRule
{
    /// <inheritdoc />
    public string Name => "plan-refused";

    /// <inheritdoc />
    public string What => "What the board file asks for must be possible together.";

    /// <inheritdoc />
    public string Why => "The plan builds the nearest thing that can be built, so that it can be looked at; it is not what was asked for.";

    /// <inheritdoc />
    public string Formula => "as the decision says that refused it";

    /// <inheritdoc />
    public string Source => "the decision's own, listed under 'resolved'";

    /// <inheritdoc />
    public IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (PlanRefusal refusal in housing.Plan.Refusals)
        {
            yield return new Finding
            {
                Rule = refusal.Rule,
                Severity = refusal.IsNoted ? Severity.Note : refusal.IsReplaced ? Severity.Warn : Severity.Stop,
                Subject = refusal.Subject,
                Message = refusal.Message,
                Measured = refusal.Measured,
                Limit = refusal.Limit,
                Unit = refusal.Unit,
                At = refusal.At,
                Remedy = refusal.Remedy,
            };
        }
    }
}
