namespace BallSim.Plots;

/// <summary>Charts as the nested name-value objects that they are; the chart library's own builders have dozens of optional arguments that C# cannot leave out.</summary>
internal static class Dynamic
{
    /// <summary>Sets properties and gives the object back. Pairs without a value are left out.</summary>
    public static T With<T>(this T target, params ReadOnlySpan<(string Name, object? Value)> properties)
        where T : DynamicObj.DynamicObj
    {
        foreach (var (name, value) in properties)
        {
            if (value is not null)
            {
                target.SetProperty(name, value);
            }
        }
        return target;
    }

    public static DynamicObj.DynamicObj Of(params ReadOnlySpan<(string Name, object? Value)> properties) => new DynamicObj.DynamicObj().With(properties);
}
